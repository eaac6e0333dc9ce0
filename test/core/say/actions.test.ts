import { expect, test } from "vitest";
import { hasWords, spokenActions } from "../../../src/core/say/actions.ts";
import { readPublished } from "../../../src/edge/published.ts";

const { actions } = readPublished("actions.json") as { actions: Record<string, { verbs: string[] }> };

test("every act of the rules has words for every verb it can come with", () => {
  const mute = Object.entries(actions).flatMap(([action, { verbs }]) =>
    verbs.filter((verb) => !hasWords(action, verb)).map((verb) => `${verb} ${action}`),
  );
  expect(mute).toEqual([]);
});

test("the catalogue speaks of no act the rules do not know", () => {
  expect(spokenActions().filter((action) => !(action in actions))).toEqual([]);
});
