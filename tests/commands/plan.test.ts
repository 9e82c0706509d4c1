import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { BenchInAFolder } from "../fixtures/bench-in-a-folder.ts";
import { at } from "../fixtures/week-time.ts";
import { done, newest, refused } from "./type-lines.ts";

/** Walkers of the made-up week: 1 hangs sealed since Sunday 20:00, 2 since Monday 12:30; 3 is promised for Sunday. */
let bench: BenchInAFolder;

interface PlanJson {
  readonly basis: string;
  readonly broken: readonly string[];
  readonly sessions: readonly {
    readonly date: string;
    readonly opens: string;
    readonly rows: readonly {
      readonly pieces: readonly { readonly tag: number | null; readonly new: number | null }[];
      readonly step: string;
      readonly from: string;
    }[];
  }[];
  readonly pieces: readonly {
    readonly tag: number | null;
    readonly process: string;
    readonly finish: string | null;
    readonly due: string | null;
    readonly late: { readonly text: string } | null;
  }[];
  readonly changes: { readonly finishes: readonly { readonly tag: number; readonly with: string }[] } | null;
}

beforeAll(async () => {
  bench = new BenchInAFolder(at("Mon 17:50"));
  await done(bench, "Mon 17:50", "settings zone Europe/Dublin");
  await done(bench, "Mon 17:50", 'hours "weekdays 18-21, Sat 9-16"');
  await done(bench, "Mon 17:50", "settings place rack 8");
  await done(bench, "Mon 17:50", 'tag walker --name perch --hung seal --since "yesterday 20:00"');
  await done(bench, "Mon 17:50", "tag walker --name smelt --hung seal --since 12:30");
  await done(bench, "Mon 17:50", "tag walker --name dace --due Sunday");
});
afterAll(() => bench.remove());

const plan = (line: string) => {
  bench.now = at("Mon 17:50");
  return bench.json<PlanJson>(`plan ${line}`);
};

describe("plan", () => {
  it("tells the days, each with its work, and when each piece is finished", async () => {
    const said = await done(bench, "Mon 17:50", "plan");
    expect(said).toMatch(/^Mon 23 Mar 17:50, 7 days: /);
    for (const day of ["Mon 23 Mar, 18:00 to 21:00", "Sat 28 Mar, 09:00 to 16:00"])
      expect(said).toContain(day);
    expect(said).not.toContain("Sun 29 Mar,");
    // Both are open at 18:00 and 1 shuts at 20:00: the second seal of both is begun in time.
    expect(said).toMatch(/1[89]:\d\d {2}(1 2|1 perch) +second seal/);
    expect(said).toContain("Finished, and dry-through");
    expect(said).toMatch(/1 perch +\w+ .*\d\d:\d\d/);
  });

  it("begins with the work that now puts first, for both go by the same plan", async () => {
    const { sessions } = await plan("");
    bench.now = at("Mon 18:00");
    const { work } = await bench.json<{ work: { tags: number[]; step: string }[] }>("now");
    const first = sessions[0]?.rows[0];
    expect(first?.step).toBe(work[0]?.step);
    expect(work[0]?.tags).toContain(first?.pieces[0]?.tag);
  });

  it("gives other programs the same with moments of the shop's zone, and passes its own check", async () => {
    const { basis, broken, sessions, pieces } = await plan("");
    expect([basis, broken]).toEqual(["plan", []]);
    expect(sessions.map(({ date }) => date)).toEqual([
      "2026-03-23",
      "2026-03-24",
      "2026-03-25",
      "2026-03-26",
      "2026-03-27",
      "2026-03-28",
    ]);
    expect(sessions[0]?.opens).toBe("2026-03-23T18:00:00+00:00");
    expect(pieces.map(({ tag }) => tag)).toEqual([1, 2, 3]);
    expect(pieces[2]?.due).toBe("2026-03-29");
  });

  it("is the same when asked again", async () => {
    expect(await plan("")).toEqual(await plan(""));
  });

  it("takes the moment it is asked for", async () => {
    const said = await done(bench, "Mon 17:50", 'plan --at "Tue 17:00" --days 1');
    expect(said).toMatch(/^Tue 24 Mar 17:00, this day: /);
  });
});

describe("what if", () => {
  it("Saturday were shut: no session, and what changes is told", async () => {
    const { sessions, changes } = await plan("--without Sat");
    expect(sessions.map(({ date }) => date)).not.toContain("2026-03-28");
    expect(changes).not.toBeNull();
    expect(await done(bench, "Mon 17:50", "plan --without Sat")).toContain("If the bench is shut Sat\n");
  });

  it("Thursday were longer, and tomorrow shut: several at once", async () => {
    const said = await done(bench, "Mon 17:50", 'plan --hours "Thu 17-22" --without tomorrow');
    expect(said).toContain("Thu 26 Mar, 17:00 to 22:00");
    expect(said).not.toContain("Tue 24 Mar, 18:00");
    expect(said).toContain("If the bench is shut tomorrow and is open 17:00 to 22:00 Thu\n");
  });

  it("a single date, tonight, and till a time are hours too", async () => {
    for (const [hours, session] of [
      ["25 March 9-12", "Wed 25 Mar, 09:00 to 12:00"],
      ["tonight 19-23", "Mon 23 Mar, 19:00 to 23:00"],
      ["till 22:15", "Mon 23 Mar, 18:00 to 22:15"],
    ]) {
      expect(await done(bench, "Mon 17:50", `plan --hours "${hours}"`)).toContain(session);
    }
  });

  it("pieces were added: each has its finish, and the date asked for", async () => {
    const { pieces } = await plan('--add 2 walker --due "1 May"');
    expect(pieces.map(({ tag }) => tag)).toEqual([1, 2, 3, null, null]);
    expect(pieces.slice(3).map(({ due }) => due)).toEqual(["2026-05-01", "2026-05-01"]);
    // Five weeks are plenty for a walker.
    for (const { finish, late } of pieces.slice(3)) {
      expect(finish).not.toBeNull();
      expect(late).toBeNull();
    }
  });

  it("pieces are promised too soon: by how much they are late, and why", async () => {
    const { pieces } = await plan("--add 1 --due tomorrow");
    // Two varnishes, the acrylic, the last varnish's 12 h to dry-hard and the resin's 24 h are days of waiting alone.
    expect(pieces.at(-1)?.late?.text).toMatch(/^its own work and waits alone take until/);
  });

  it("two processes, each with its own date", async () => {
    const { pieces } = await plan('--add 1 walker --add 1 "turned popper" --due "1 May" --due "2 May"');
    // Pieces not tagged yet stand in the order in which they are begun.
    const added = pieces.slice(3).map(({ process, due }) => `${process} ${due}`);
    expect(added.sort()).toEqual(["turned popper 2026-05-02", "walker 2026-05-01"]);
  });

  it("never touches the journal", async () => {
    const before = await newest(bench);
    for (const line of ["--without Sat", '--hours "Thu 18-22"', "--add 3 walker", "--card", "--days 3"]) {
      await done(bench, "Mon 17:50", `plan ${line}`);
    }
    expect(await newest(bench)).toBe(before);
    expect(await done(bench, "Mon 17:50", "hours")).toContain("Thu 26 Mar  18:00 to 21:00");
  });
});

describe("the card of a day", () => {
  it("has a box for each row, in 80 columns of plain ASCII", async () => {
    const lines = (await done(bench, "Mon 17:50", "plan --card")).trimEnd().split("\n");
    expect(lines.slice(0, 3).join(" ")).toMatch(
      /^Day card, planned Mon 23 Mar 17:50 -+ Mon 23 Mar, 18:00 to 21:00/,
    );
    for (const line of lines) expect(line).toMatch(/^[ -~]{0,80}$/);
    const { sessions } = await plan("");
    expect(lines.filter((line) => /^\[ \] \d\d:\d\d/.test(line))).toHaveLength(
      sessions[0]?.rows.length ?? -1,
    );
    expect(lines.join("\n")).toContain("solvent vapour");
  });

  it("is of the day that is named", async () => {
    expect(await done(bench, "Mon 17:50", "plan --card Sat")).toContain("\nSat 28 Mar, 09:00 to 16:00");
  });
});

describe("words that are wrong are told in a sentence", () => {
  it.each([
    ["--days 0", /whole number from 1/],
    ["--days 400", /too far ahead/],
    ["--days three", /no count/],
    ["--without Blursday", /not a date/],
    ['--without "3 May"', /not among the days shown/],
    ["--without Sat --days 2", /names no day/],
    ["--hours banana", /neither a day nor hours/],
    ["--hours Thu", /no hours/],
    ['--hours "away 3 May"', /hours/],
    ["--add 0 walker", /no count/],
    ["--add 3 unicorn", /no process "unicorn"/],
    ["--add 3 walker --due 2026-03-01", /has passed/],
    ['--add 3 walker --due "30 February"', /no date/],
    ["--due Friday", /say what is added/i],
    ["--add 1 walker --due Fri --due Sat", /--due once/],
    ["--card yesterday", /not open/],
    ["--card Sunday", /not open/],
    ["tomorrow", /more than this takes/],
  ])("plan %s", async (line, sentence) => {
    expect(await refused(bench, "Mon 17:50", `plan ${line}`, 2)).toMatch(sentence);
  });

  it("a process that fits no bench session is named with its step and how long it needs", async () => {
    const short = new BenchInAFolder(at("Mon 17:50"));
    try {
      await done(short, "Mon 17:50", 'hours "daily 18-18:20"');
      // 20 min to melt, 6 to pour, 5 to put away: 31 at a stretch, and 20 are open.
      expect(await refused(short, "Mon 17:50", "plan --add 1 walker", 2)).toBe(
        "Walker: pour the ballast needs 31 min at a stretch, and no bench session is longer than 20 min.",
      );
    } finally {
      short.remove();
    }
  });
});
