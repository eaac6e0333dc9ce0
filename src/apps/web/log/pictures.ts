import type { TabletDatabase } from "./database.ts";

/** Keeps a picture until the server has it. @returns its SHA-256, by which it is found again */
export async function keepPicture(database: TabletDatabase, picture: Blob): Promise<string> {
  const bytes = new Uint8Array(await crypto.subtle.digest("SHA-256", await picture.arrayBuffer()));
  const name = [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  await database.put("pictures", picture, name);
  return name;
}

/** Sends the pictures that wait; what cannot be sent now waits on. */
export async function sendPictures(database: TabletDatabase): Promise<void> {
  for (const name of await database.getAllKeys("pictures")) {
    const picture = await database.get("pictures", name);
    if (picture === undefined) continue;
    const body = new FormData();
    body.set("picture", picture, "picture");
    try {
      const reply = await fetch("/api/pictures", { method: "POST", body });
      if (reply.ok) await database.delete("pictures", name);
      else if (reply.status === 401) return;
    } catch {
      return;
    }
  }
}
