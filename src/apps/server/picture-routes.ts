import { z } from "zod";
import { findPicture, storePicture } from "../../edge/serve/picture-store.ts";
import { refusal } from "./answers.ts";
import type { Api, House } from "./house.ts";
import { refusalSchema } from "./problem-schema.ts";

/** A raw picture of a camera with 100 million dots. */
export const MOST_PICTURE_BYTES = 120 * 1024 * 1024;

const NOT_KEPT = "Nothing was kept. Send the picture itself, as the camera wrote it.";
const hash = z.string().regex(/^[0-9a-f]{64}$/);

/** Pictures in and out, by their SHA-256. What a file is called, and what it says it is, nobody looks at. */
export function servePictures(api: Api, { folder }: House): void {
  api.post(
    "/api/pictures",
    {
      schema: {
        summary: "Takes in one picture (JPEG, PNG, TIFF or WebP), as the only part of a form",
        consumes: ["multipart/form-data"],
        response: {
          200: z.object({ picture: hash, type: z.string(), bytes: z.number() }),
          415: refusalSchema,
          400: refusalSchema,
          413: refusalSchema,
        },
      },
    },
    async (request, reply) => {
      const part = request.isMultipart() ? await request.file() : undefined;
      if (part === undefined)
        return reply
          .code(400)
          .send(
            refusal("no-picture", "no file", "a form with one file", "Choose a picture and send it again."),
          );
      const stored = await storePicture(folder, part.file, () => part.file.truncated);
      if (typeof stored !== "string")
        return { picture: stored.picture, type: stored.kind.type, bytes: stored.bytes };
      return stored === "too large"
        ? reply
            .code(413)
            .send(
              refusal("too-large", `more than ${MOST_PICTURE_BYTES} bytes`, "a smaller picture", NOT_KEPT),
            )
        : reply.code(415).send(refusal("not-a-picture", "other bytes", "JPEG, PNG, TIFF or WebP", NOT_KEPT));
    },
  );
  api.get(
    "/api/pictures/:picture",
    {
      schema: {
        summary: "A picture by its SHA-256",
        params: z.strictObject({ picture: hash }),
        response: { 200: z.any(), 404: refusalSchema },
      },
    },
    async ({ params: { picture } }, reply) => {
      const found = await findPicture(folder, picture);
      if (found === null)
        return reply
          .code(404)
          .send(
            refusal(
              "no-such-picture",
              picture,
              "a picture that was sent here",
              "Look whether its device has sent it yet.",
            ),
          );
      return reply.type(found.type).header("content-length", String(found.bytes)).send(found.read());
    },
  );
}
