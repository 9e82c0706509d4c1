import { addDays, instantOf, localTime } from "../../time/civil.ts";
import { after, type Minutes } from "../../time/instant.ts";
import { ALIKE_AFTER, type NowContext, readShop, type ShopFacts } from "../plan-shop.ts";

const DAY: Minutes = 1_440;
/** So many days from now each day's air is expected as that of the day before. */
const DAYS_UNTIL_ALIKE = Math.ceil(ALIKE_AFTER / DAY) + 1;

type Shop = Parameters<typeof readShop>[0];

/**
 * The shop with nothing in it, on a day from which on the air of every day is as that of the day before: what is true of
 * its first day is true of each day of a rotation. Minute 0 is `clock` minutes after midnight. What is mixed keeps as
 * short as it does at any hour of that day; hands and aims are today's.
 */
export function typicalFacts(shop: Shop, context: NowContext, clock: Minutes): ShopFacts {
  const { zone, now } = context;
  const empty = { ...shop, pieces: new Map() };
  const begins = instantOf(zone, addDays(localTime(zone, now).date, DAYS_UNTIL_ALIKE), clock % DAY);
  const hours = Array.from({ length: 24 }, (_, hour) =>
    readShop(empty, { ...context, now: after(begins, hour * 60) }),
  );
  const { hands, aim } = readShop(empty, context);
  const [first = readShop(empty, context)] = hours;
  return { ...first, hands, aim, keepsToday: (keeps, coat) => shortestKept(hours, keeps, coat) };
}

function shortestKept(
  hours: readonly ShopFacts[],
  keeps: Parameters<ShopFacts["keepsToday"]>[0],
  coat: Parameters<ShopFacts["keepsToday"]>[1],
): typeof keeps {
  if (keeps.way !== "mix") return keeps;
  const minutes = hours.map(({ keepsToday }) => {
    const kept = keepsToday(keeps, coat);
    return kept.way === "mix" ? kept.minutes : keeps.minutes;
  });
  return { ...keeps, minutes: Math.min(...minutes) };
}
