import { Page } from "../page.tsx";

export const PlanRoom = () => <Page />;
