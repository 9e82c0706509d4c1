/** Readings from a broker, by its own subscriber, as README shows: Debian's mosquitto on this machine alone. */
import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { builtCommand } from "../../src/fresh.mjs";

const PROGRAMS = ["mosquitto", "mosquitto_pub", "mosquitto_sub"];
const env = { ...process.env, PATH: `${process.env.PATH ?? ""}:/usr/sbin` };
const missing = PROGRAMS.filter((program) => spawnSync(program, ["-h"], { env }).error !== undefined);

test(`a sensor's readings come by mosquitto_sub${missing.length > 0 ? ` (not run: ${missing.join(", ")} missing)` : ""}`, async () => {
  if (missing.length > 0) {
    expect(process.env.DRYLINE_DEMAND_OUTSIDE ?? "", "mosquitto must be installed here").toBe("");
    return;
  }
  const folder = mkdtempSync(join(tmpdir(), "dryline-broker-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const port = String(await freePort());
  writeFileSync(join(folder, "broker.conf"), `listener ${port} 127.0.0.1\nallow_anonymous true\n`);
  const broker = start("mosquitto", ["-c", join(folder, "broker.conf")]);
  publishUntilTaken(port, "hello", "hello");
  // Kept by the broker for whoever subscribes later: one topic a sensor, a minute apart.
  const minute = Math.floor(Date.now() / 60_000) * 60;
  for (const [index, temperature] of [20.1, 20.2, 20.3].entries()) {
    const reading = { time: minute - (3 - index) * 60, temperature, humidity: 50 };
    publishUntilTaken(port, `garage/air/${index}`, JSON.stringify(reading));
  }
  // Three messages, then the subscriber ends by itself, and the pipe with it.
  const subscriber = start("mosquitto_sub", [
    "-h",
    "127.0.0.1",
    "-p",
    port,
    "-t",
    "garage/air/#",
    "-C",
    "3",
    "-v",
  ]);
  const dryline = start(process.execPath, [builtCommand, "air", "-", "--from", "garage"], {
    DRYLINE_HOME: folder,
    TZ: "Etc/UTC",
  });
  subscriber.stdout?.pipe(dryline.stdin as NonNullable<ChildProcess["stdin"]>);
  expect(await textOf(dryline)).toMatch(/3 readings kept/);
  broker.kill();
  const air = spawnSync(process.execPath, [builtCommand, "air"], {
    env: { ...env, DRYLINE_HOME: folder },
    encoding: "utf8",
  });
  expect(air.stdout).toMatch(/the shop: 20.3 °C 50 %/);
}, 30_000);

function start(program: string, args: readonly string[], more: NodeJS.ProcessEnv = {}): ChildProcess {
  const child = spawn(program, args, { env: { ...env, ...more }, stdio: ["pipe", "pipe", "ignore"] });
  onTestFinished(() => void child.kill());
  return child;
}

function textOf(child: ChildProcess): Promise<string> {
  let text = "";
  child.stdout?.on("data", (piece) => {
    text += String(piece);
  });
  return new Promise((resolve) => child.once("close", () => resolve(text)));
}

/** Publishes a message that the broker keeps; it may only be starting, so it is asked again until it takes it. */
function publishUntilTaken(port: string, topic: string, message: string): void {
  const words = ["-h", "127.0.0.1", "-p", port, "-r", "-t", topic, "-m", message];
  for (let attempt = 0; attempt < 200; attempt++) {
    if (spawnSync("mosquitto_pub", words, { env }).status === 0) return;
  }
  throw new Error("the broker does not answer");
}

/** A port nobody listens at. */
function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once("error", reject);
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      server.close(() => resolve(typeof address === "object" && address !== null ? address.port : 0));
    });
  });
}
