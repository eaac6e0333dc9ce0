import { firstRun } from "../../../core/say/rooms/first-run.ts";

/** How a campaign is begun, for whoever stands before the door of none. */
export const FirstRun = () => (
  <details className="first-run">
    <summary>{firstRun.title}</summary>
    <p>{firstRun.help}</p>
    <ol>
      {firstRun.steps.map(({ does, command }) => (
        <li key={command}>
          {does} <code>{command}</code>
        </li>
      ))}
    </ol>
    <p>
      {firstRun.look} <code>{firstRun.lookCommand}</code>
    </p>
  </details>
);
