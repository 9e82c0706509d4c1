import { Diary } from "../fixtures/diary.ts";
import { walker } from "../fixtures/walker.ts";
import { at } from "../fixtures/week-time.ts";

const ochre = { colour: "ochre", minutes: 10, flashOff: 5 };

/** The made-up week of Monday 23 March 2026: what was taken, hung, mended and missed from Monday to Saturday. */
export function weekOfTheWalkers(): Diary {
  const diary = new Diary(walker);
  monday(diary);
  tuesday(diary);
  wednesday(diary);
  thursdayAndFriday(diary);
  saturday(diary);
  return diary;
}

function monday(diary: Diary): void {
  diary.came(1, "seal", "last Sun 20:00", "Mon 18:00", [ochre]);
  diary.came(2, "seal", "Mon 12:30", "Mon 18:00", [ochre]);
  diary.tag(3, "Mon 18:02", { scheme: [ochre] });
  diary.take(3, "shape", "Mon 18:02");
  diary.hang(3, "shape", "Mon 18:42"); // 40
  diary.take(3, "drill", "Mon 18:42");
  diary.hang(3, "drill", "Mon 18:50"); // 8
  diary.take([1, 2], "second seal", "Mon 18:52");
  diary.hang([1, 2], "second seal", "Mon 19:04"); // 12, 6 each
  diary.take(3, "pour the ballast", "Mon 20:12");
  diary.hang(3, "pour the ballast", "Mon 20:18"); // 6
}

function tuesday(diary: Diary): void {
  diary.take(1, "colours", "Tue 18:15", { colour: "ochre" });
  diary.hang(1, "colours", "Tue 18:25", { colour: "ochre" }); // 10
  diary.take(1, "colours", "Tue 18:30", { colour: "green", another: true });
  diary.hang(1, "colours", "Tue 18:38", { colour: "green", another: true }); // 8
  diary.take(3, "seal", "Tue 19:20");
  diary.hang(3, "seal", "Tue 19:26"); // 6
  diary.take(1, "first clear", "Tue 20:30");
}

function wednesday(diary: Diary): void {
  diary.recorded = at("Wed 18:00");
  const usual = diary.hang(1, "first clear", "Tue 20:38", { guessed: true });
  diary.recorded = null;
  diary.amend(usual, "Tue 20:45", "Wed 18:01"); // 15, a guess
  diary.mend(3, "level the run", 10, "seal", "Wed 19:00"); // 10
  diary.take(3, "seal", "Wed 19:10");
  diary.hang(3, "seal", "Wed 19:16"); // 6
  diary.touch(1, "first clear", "hard", "Wed 19:58");
  diary.take(1, "detail", "Wed 20:00");
  diary.hang(1, "detail", "Wed 20:15"); // 15
}

function thursdayAndFriday(diary: Diary): void {
  diary.came(4, "detail", "last Sat 15:50", "Thu 18:30");
  diary.came(5, "detail", "last Sat 15:50", "Thu 18:30");
  diary.take([1, 4, 5], "last clear", "Thu 18:36");
  diary.hang([1, 4, 5], "last clear", "Thu 19:00"); // 24, 8 each
  diary.take(3, "second seal", "Thu 19:05");
  diary.hang(3, "second seal", "Thu 19:11"); // 6
  diary.settle({ of: "day", date: "2026-03-26", hours: [{ opens: 1080, closes: 1335 }] }, "Thu 19:20");
  diary.take(3, "colours", "Fri 18:40", { colour: "ochre" });
  diary.hang(3, "colours", "Fri 18:50", { colour: "ochre" }); // 10
}

function saturday(diary: Diary): void {
  diary.take([4, 5], "hangers", "Sat 14:20");
  diary.hang([4, 5], "hangers", "Sat 14:40"); // 20, 10 each
  diary.take(4, "water test", "Sat 14:50");
  diary.hang(4, "water test", "Sat 15:00", { result: "tune" }); // 10
  diary.take(5, "water test", "Sat 15:10");
  diary.hang(5, "water test", "Sat 15:20", { result: "passes" }); // 10
  diary.mend(5, "glue the hanger", 5, "hangers", "Sat 15:30"); // 5
  diary.take(5, "hangers", "Sat 15:31");
  diary.hang(5, "hangers", "Sat 15:40"); // 9
  diary.take(5, "water test", "Sat 15:40");
  diary.hang(5, "water test", "Sat 15:50", { result: "passes" }); // 10
}
