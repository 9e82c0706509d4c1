import { isAbsolute, join } from "node:path";

/** Where dryline keeps things. Nothing here is created by asking. */
export interface PlacesOnDisk {
  /** The journal, the maker's own process and coat files. */
  readonly data: string;
  /** Taste. */
  readonly config: string;
  /** Only what can be made again. */
  readonly cache: string;
  /** When the maker last looked, reports of our own faults. */
  readonly state: string;
}

/** What this machine says of itself; handed in, so that tests need no real home. */
export interface Machine {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly platform: NodeJS.Platform;
  /** May throw: a user without HOME and without a passwd entry has none. */
  readonly homedir: () => string;
}

/** No folder can be named: one sentence for the maker. */
export class NoHomeFolder extends Error {
  constructor() {
    super(
      "No home folder is known on this machine: set DRYLINE_HOME to a folder dryline may keep its journal in.",
    );
  }
}

/**
 * `DRYLINE_HOME` puts everything in one folder; else the XDG base directories (v0.8: an unset, empty or
 * relative value means the default), or the platform's own places on macOS and Windows.
 *
 * Throws NoHomeFolder where neither names a folder.
 */
export function placesOnDisk({ env, platform, homedir }: Machine): PlacesOnDisk {
  const own = env.DRYLINE_HOME;
  if (own !== undefined && own !== "") {
    return { data: own, config: own, cache: join(own, "cache"), state: join(own, "state") };
  }
  const home = (...parts: string[]) => join(homeFolder(homedir), ...parts);
  if (platform === "darwin") {
    const support = home("Library", "Application Support", "dryline");
    return {
      data: support,
      config: home("Library", "Preferences", "dryline"),
      cache: home("Library", "Caches", "dryline"),
      state: support,
    };
  }
  if (platform === "win32") {
    const local = env.LOCALAPPDATA || home("AppData", "Local");
    const roaming = env.APPDATA || home("AppData", "Roaming");
    return {
      data: join(local, "dryline", "Data"),
      config: join(roaming, "dryline", "Config"),
      cache: join(local, "dryline", "Cache"),
      state: join(local, "dryline", "State"),
    };
  }
  const base = (name: string, ...usual: string[]) => {
    const said = env[name];
    return join(said !== undefined && isAbsolute(said) ? said : home(...usual), "dryline");
  };
  return {
    data: base("XDG_DATA_HOME", ".local", "share"),
    config: base("XDG_CONFIG_HOME", ".config"),
    cache: base("XDG_CACHE_HOME", ".cache"),
    state: base("XDG_STATE_HOME", ".local", "state"),
  };
}

function homeFolder(homedir: () => string): string {
  let home = "";
  try {
    home = homedir();
  } catch {
    throw new NoHomeFolder();
  }
  if (home === "") throw new NoHomeFolder();
  return home;
}
