import type { FastifyRequest } from "fastify";
import { z } from "zod";
import { findPicture, type StoredPicture, storePicture } from "../../edge/serve/picture-store.ts";
import { refusal } from "./answers.ts";
import type { Api, House } from "./house.ts";
import { refusalSchema } from "./problem-schema.ts";

/** A raw picture of a camera with 100 million dots. */
export const MOST_PICTURE_BYTES = 120 * 1024 * 1024;

const NOT_KEPT = "Nothing was kept. Send the picture itself, as the camera wrote it.";
const hash = z.string().regex(/^[0-9a-f]{64}$/);

const REFUSED = {
  "no picture": {
    status: 400,
    answer: refusal("no-picture", "another body", "a form with one file", NOT_KEPT),
  },
  "too large": {
    status: 413,
    answer: refusal("too-large", "too many bytes", `${MOST_PICTURE_BYTES} at most`, NOT_KEPT),
  },
  "not a picture": {
    status: 415,
    answer: refusal("not-a-picture", "other bytes", "JPEG, PNG, TIFF or WebP", NOT_KEPT),
  },
} as const;

async function takePicture(
  request: FastifyRequest,
  folder: string,
): Promise<StoredPicture | keyof typeof REFUSED> {
  try {
    const part = request.isMultipart() ? await request.file() : undefined;
    if (part === undefined) return "no picture";
    return await storePicture(folder, part.file, () => part.file.truncated);
  } catch (error) {
    if (isBrokenForm(error)) return "no picture";
    throw error;
  }
}

/** A form that cannot be read, or breaks off, is a plain error without a code or a status; a disk's and our own are not. */
const isBrokenForm = (error: unknown): boolean =>
  error instanceof Error && error.constructor === Error && !("statusCode" in error) && !("syscall" in error);

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
      const taken = await takePicture(request, folder);
      if (typeof taken === "string") return reply.code(REFUSED[taken].status).send(REFUSED[taken].answer);
      return { picture: taken.picture, type: taken.kind.type, bytes: taken.bytes };
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
