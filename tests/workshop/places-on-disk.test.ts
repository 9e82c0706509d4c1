import { describe, expect, it } from "vitest";
import { NoHomeFolder, placesOnDisk } from "../../src/workshop/places-on-disk.ts";

const machine = { platform: "linux", homedir: () => "/home/maker" } as const;

describe("where things are kept", () => {
  it("follows the XDG base directories (freedesktop.org, version 0.8) and their defaults", () => {
    expect(placesOnDisk({ ...machine, env: {} })).toEqual({
      data: "/home/maker/.local/share/dryline",
      config: "/home/maker/.config/dryline",
      cache: "/home/maker/.cache/dryline",
      state: "/home/maker/.local/state/dryline",
    });
    expect(placesOnDisk({ ...machine, env: { XDG_DATA_HOME: "/big/disk" } }).data).toBe("/big/disk/dryline");
  });

  it("takes an empty or relative XDG value as unset, as the standard says", () => {
    const { data, config } = placesOnDisk({
      ...machine,
      env: { XDG_DATA_HOME: "", XDG_CONFIG_HOME: "somewhere" },
    });
    expect(data).toBe("/home/maker/.local/share/dryline");
    expect(config).toBe("/home/maker/.config/dryline");
  });

  it("puts everything in one folder for DRYLINE_HOME, even where no home is known", () => {
    const homedir = () => {
      throw new Error("no passwd entry");
    };
    const places = placesOnDisk({ platform: "linux", homedir, env: { DRYLINE_HOME: "/usb/shop" } });
    expect(Object.values(places).every((place) => place.startsWith("/usb/shop"))).toBe(true);
    expect(places.data).toBe(places.config);
  });

  it("says in one sentence what to set where no home is known at all", () => {
    const homedir = () => {
      throw new Error("no passwd entry");
    };
    expect(() => placesOnDisk({ platform: "linux", homedir, env: {} })).toThrow(NoHomeFolder);
    expect(() => placesOnDisk({ platform: "linux", homedir, env: {} })).toThrow(/DRYLINE_HOME/);
  });

  it("uses the platform's own places on macOS", () => {
    expect(placesOnDisk({ ...machine, platform: "darwin", env: {} }).data).toBe(
      "/home/maker/Library/Application Support/dryline",
    );
  });
});
