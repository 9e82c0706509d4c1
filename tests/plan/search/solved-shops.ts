/** A made-up shop with what its best plan costs, as a general constraint solver proved. */
export interface SolvedShop {
  readonly name: string;
  readonly best: number;
  readonly horizon: number;
  /** Sessions as `open..close`. */
  readonly hours: string;
  /** Places on the rack; null: no end of them. */
  readonly rack: number | null;
  readonly withSetUps: boolean;
  readonly wipCap: number | null;
  /**
   * A piece a line: release, due, weight and last cure; then its steps in order: `>least..most` wait, minutes,
   * `@station/family`, `!` what it is, `mark+minutes` it leaves in the room, `#minutes` on the rack.
   */
  readonly pieces: string;
}

/** Drawn by our own generator of shops in the shop/1 form, solved by a general constraint solver: proven optimal, each. */
export const solvedShops: readonly SolvedShop[] = [
  {
    name: "tiny-daily-s900",
    best: 9552,
    horizon: 28800,
    hours: `540..1020 1980..2460 3420..3900 4860..5340 6300..6780 7740..8220 9180..9660 10620..11100 12060..12540
      13500..13980 14940..15420 16380..16860 17820..18300 19260..19740 20700..21180 22140..22620 23580..24060
      25020..25500 26460..26940 27900..28380`,
    rack: null,
    withSetUps: false,
    wipCap: null,
    pieces: `
      0 6720 2 985: 30 !dust, 5 solvent+60 wet+35 #115, >140 4 @epoxy, >565 8 !dust, 8 @booth/white wet+15
        #25, >45 6 @epoxy wet+220 #975
      0 6591 3 1290: 18 !dust, 9 @pot !heat, >25 8 @epoxy, >665 11 !dust, 5 @booth/white wet+15 #85, >120 4
        @epoxy wet+170 #1040
      0 5515 3 985: 28 !dust, 7 solvent+60 wet+35 #115, >140 3 @epoxy, >565 10 !dust, 9 @booth/dark wet+15
        #25, >45 10 @epoxy wet+220 #975
    `,
  },
  {
    name: "tiny-daily-s901-w-h6-c",
    best: 11096,
    horizon: 27360,
    hours: `540..1020 1980..2460 3420..3900 4860..5340 6300..6780 7740..8220 9180..9660 10620..11100 12060..12540
      13500..13980 14940..15420 16380..16860 17820..18300 19260..19740 20700..21180 22140..22620 23580..24060
      25020..25500 26460..26940`,
    rack: 6,
    withSetUps: true,
    wipCap: null,
    pieces: `
      0 6102 1 665: 29 !dust, 9 @epoxy, >320 8 @booth/white wet+20 #60, >75 4 @booth/white wet+15 #50,
        >95..115 4 solvent+25 wet+15 #400, >415 12 @epoxy wet+140 #430
      0 5875 1 895: 23 !dust, 2 solvent+55 wet+25 #90, >215..1740 2 !dust, 12 !dust, 5 @epoxy wet+175 #505,
        >535..2060 9 @epoxy wet+175 #380
      0 5633 3 665: 29 !dust, 7 @epoxy, >320 10 @booth/white wet+20 #60, >75 2 @booth/white wet+15 #50,
        >95..115 5 solvent+25 wet+15 #400, >415 9 @epoxy wet+140 #430
    `,
  },
  {
    name: "tiny-evening-s902-w-h6-c",
    best: 14663,
    horizon: 33120,
    hours: `1080..1260 2520..2700 3960..4140 5400..5580 6840..7020 7740..8160 11160..11340 12600..12780 14040..14220
      15480..15660 16920..17100 17820..18240 21240..21420 22680..22860 24120..24300 25560..25740 27000..27180
      27900..28320 31320..31500 32760..32940`,
    rack: 6,
    withSetUps: true,
    wipCap: null,
    pieces: `
      0 6378 1 1365: 30 !dust, 12 !dust, 9 @epoxy, >570 7 @booth/white wet+20 solvent+20 #70, >100..3715 13,
        >70 6 @epoxy wet+240 #670
      0 6385 3 0: 29 !dust, 7 @epoxy, >280 6 !dust, 5 @booth/white wet+10 #45, >55 12 @epoxy wet+130 #495,
        >745..4195 9
      0 6734 1 1365: 30 !dust, 13 !dust, 12 @epoxy, >570 10 @booth/white wet+20 solvent+20 #70, >100..3715 15,
        >70 7 @epoxy wet+240 #670
    `,
  },
  {
    name: "tiny-nightly-s903-w-h4-c",
    best: 12525,
    horizon: 31680,
    hours: `1080..1260 2520..2700 3960..4140 5400..5580 6840..7020 8280..8460 9720..9900 11160..11340 12600..12780
      14040..14220 15480..15660 16920..17100 18360..18540 19800..19980 21240..21420 22680..22860 24120..24300
      25560..25740 27000..27180 28440..28620 29880..30060 31320..31500`,
    rack: 4,
    withSetUps: true,
    wipCap: 4,
    pieces: `
      0 5414 1 1135: 27 !dust, 5 !dust, 13 @booth/warm wet+10 #45, >90..1600 19, >55 3 !dust, 7 @epoxy wet+130
        #830
      0 7061 1 1075: 26 !dust, 8 !dust, 9 @epoxy, >710 6 @booth/white wet+15 solvent+20 #35, >50 8 solvent+30
        wet+25 #140, >240..1885 8 @epoxy wet+130 #490
      0 6639 3 1135: 27 !dust, 7 !dust, 14 @booth/warm wet+10 #45, >90..1600 15, >55 2 !dust, 6 @epoxy wet+130
        #830
    `,
  },
  {
    name: "tiny-always-s904-w-h6-c",
    best: 4665,
    horizon: 20160,
    hours: `0..20160`,
    rack: 6,
    withSetUps: true,
    wipCap: null,
    pieces: `
      0 1471 1 895: 19 !dust, 7 !dust, 11 @booth/white wet+20 #50, >60..110 6 solvent+60 wet+40 #150, >250 7
        @booth/dark wet+15 solvent+20 #25, >40 9 @epoxy wet+155 #620
      0 2507 3 1370: 32 !dust, 6 solvent+25 wet+45 #240, >300 9, >80 4 @booth/warm wet+10 solvent+20 #45,
        >50..110 3 !dust, 9 @epoxy wet+125 #1065
      0 1725 1 895: 15 !dust, 9 !dust, 11 @booth/white wet+20 #50, >60..110 6 solvent+60 wet+40 #150, >250 6
        @booth/white wet+15 solvent+20 #25, >40 8 @epoxy wet+155 #620
    `,
  },
  {
    name: "small-nightly-s903-w-h4-c",
    best: 35182,
    horizon: 46080,
    hours: `1080..1260 2520..2700 3960..4140 5400..5580 6840..7020 8280..8460 9720..9900 11160..11340 12600..12780
      14040..14220 15480..15660 16920..17100 18360..18540 19800..19980 21240..21420 22680..22860 24120..24300
      25560..25740 27000..27180 28440..28620 29880..30060 31320..31500 32760..32940 34200..34380 35640..35820
      37080..37260 38520..38700 39960..40140 41400..41580 42840..43020 44280..44460 45720..45900`,
    rack: 4,
    withSetUps: true,
    wipCap: 4,
    pieces: `
      0 7348 1 0: 19 !dust, 15 !dust, 5 !dust, 5 solvent+45 wet+15 #115, >160..1820 8 !dust, 9 @booth/white
        wet+10 #25, >45..1540 10 @booth/metal wet+10 #30, >35 11, >55 6 @epoxy wet+145 #515, >575..2165 2 !dust,
        3 @epoxy wet+140 #385, >685 10
      0 9917 3 1325: 32 !dust, 16 !dust, 8 solvent+45 wet+15 #105, >140..1665 12 !dust, 6 @booth/white wet+15
        solvent+20 #35, >40 9 @booth/white wet+10 #35, >35..1665 13 @booth/white wet+15 #20, >25..60 16
        @booth/white wet+15 #20, >25 7 solvent+35 wet+20 #290, >370 7 @booth/warm wet+15 solvent+20 #65, >80 5
        !dust, 5 @epoxy wet+200 #660
      0 11674 1 715: 25 !dust, 9 !dust, 8 !dust, 7 @pot !heat, >55 6 @epoxy, >250 9 !dust, 2 @booth/white
        wet+15 #15, >30 8 solvent+25 wet+15 #160, >165..1650 19, >50 3 @booth/dark wet+15 #70, >70 4 !dust, 12
        @epoxy wet+130 #470
      0 11427 2 0: 18 !dust, 12 !dust, 9 !dust, 2 solvent+45 wet+15 #115, >160..1820 8 !dust, 10 @booth/warm
        wet+10 #25, >45..1540 8 @booth/dark wet+10 #30, >35 12, >55 7 @epoxy wet+145 #515, >575..2165 3 !dust, 7
        @epoxy wet+140 #385, >685 11
      0 14066 2 1325: 33 !dust, 14 !dust, 5 solvent+45 wet+15 #105, >140..1665 13 !dust, 5 @booth/white wet+15
        solvent+20 #35, >40 8 @booth/white wet+10 #35, >35..1665 13 @booth/white wet+15 #20, >25..60 16
        @booth/white wet+15 #20, >25 3 solvent+35 wet+20 #290, >370 4 @booth/dark wet+15 solvent+20 #65, >80 4
        !dust, 8 @epoxy wet+200 #660
    `,
  },
];
