/** Words for somebody who opens Leafward before there is a campaign. */
export const firstRun = {
  title: "No campaign yet?",
  help: "A campaign is begun on the laptop, from a folder of sheets; devices come in afterwards.",
  steps: [
    { does: "Write a folder with empty sheets and example rows:", command: "npx leafward new my-campaign" },
    {
      does: "Fill in the items, who works, and what is in store; then see whether everything can be read, line by line with what to do:",
      command: "npx leafward check my-campaign",
    },
    {
      does: "Start it. The laptop then shows the code for the first device:",
      command: "npx leafward start my-campaign",
    },
  ],
  look: "Only looking around? Without a folder, start opens an invented campaign:",
  lookCommand: "npx leafward start",
} as const;
