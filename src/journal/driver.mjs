/**
 * The driver of SQLite for the Node that runs. The line that Node 20 needs aborts under Node 24 where a statement is
 * collected, and the next line needs Node 22. So package.json names both, the newer as optional, and everything imports
 * "better-sqlite3", which builds and tests read as this name.
 */
export const newerDriver = "better-sqlite3-for-node-22";

export const driver = Number.parseInt(process.versions.node, 10) >= 22 ? newerDriver : "better-sqlite3";
