import type { Occasion } from "./mastery-occasions";

/** Below this share right a sign counts as forgotten, below the other as unsteady: our choice, no source. */
const FORGOTTEN_BELOW = 0.5;
const UNSTEADY_BELOW = 0.8;

/** How well a sign was remembered on an occasion, in the words of the port `scheduler`. */
export const recallOf = ({ correct, opportunities }: Occasion): "forgotten" | "unsteady" | "remembered" => {
  const share = correct / opportunities;
  if (share < FORGOTTEN_BELOW) return "forgotten";
  return share < UNSTEADY_BELOW ? "unsteady" : "remembered";
};
