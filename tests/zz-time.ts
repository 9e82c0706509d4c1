import { afterEach, beforeEach, afterAll, beforeAll } from "vitest";
let c: NodeJS.CpuUsage; const a0 = process.cpuUsage();
beforeEach(() => { c = process.cpuUsage(); });
afterEach((t) => { const d = process.cpuUsage(c); console.error("CPU", ((d.user + d.system) / 1e6).toFixed(2), t.task.name); });
afterAll(() => { const d = process.cpuUsage(a0); console.error("CPU all", ((d.user + d.system) / 1e6).toFixed(2)); });
