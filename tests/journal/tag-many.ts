/**
 * A program that prints "opening", then tags pieces as fast as it can and prints "ACT TAG NAME" once each is
 * acknowledged. Words: the journal's path, a name that goes on each piece, how many.
 */
import { writeSync } from "node:fs";
import { openJournal } from "../../src/journal/sqlite-journal.ts";
import { anAct, monday, tagged } from "./made-acts.ts";
import { summarisePlainly } from "./summarise-plainly.ts";

async function tagMany(path: string, name: string, count: number): Promise<void> {
  writeSync(1, "opening\n");
  const journal = await openJournal(path, { summarise: summarisePlainly, summaryVersion: 1 });
  let { nextTag } = await journal.read({ of: "tags", tags: [] });
  for (let made = 0; made < count; ) {
    const event = { ...tagged(nextTag, monday + made), name: `${name} ${made}` };
    const appended = await journal.append(anAct([event], monday, { nextTag }));
    if (appended.kept) {
      made++;
      // Straight to the pipe: what is printed was acknowledged before, even if this program is killed right after.
      writeSync(1, `${appended.act} ${nextTag} ${event.name}\n`);
    }
    nextTag = appended.kept ? nextTag + 1 : (await journal.read({ of: "tags", tags: [] })).nextTag;
  }
  journal.close();
}

const [, , path = "", name = "", count = ""] = process.argv;
tagMany(path, name, Number(count));
