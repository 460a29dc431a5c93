import type { PaneView, ViewName } from "./pane-context";

/** A view of the pane: its name in the list of views, and how its code comes when it is first wanted. */
export interface ListedView {
  readonly name: ViewName;
  readonly title: string;
  /** false where the view is about the whole workbook and no list of pupils stands above it */
  readonly ofOnePupil: boolean;
  load(): Promise<PaneView>;
}

/** The views in the order in which they are listed; the first is shown when the pane opens. */
export const VIEWS: readonly ListedView[] = [
  {
    name: "caseload",
    title: "Caseload",
    ofOnePupil: false,
    load: async () => (await import(/* webpackChunkName: "caseload" */ "./caseload-view")).makeCaseloadView(),
  },
  {
    name: "progress",
    title: "Progress",
    ofOnePupil: true,
    load: async () => (await import(/* webpackChunkName: "progress" */ "./progress-view")).makeProgressView(),
  },
  {
    name: "signs",
    title: "Signs",
    ofOnePupil: true,
    load: async () => (await import(/* webpackChunkName: "signs" */ "./signs-view")).makeSignsView(),
  },
  {
    name: "next",
    title: "What next",
    ofOnePupil: true,
    load: async () => (await import(/* webpackChunkName: "next" */ "./next-view")).makeNextView(),
  },
  {
    name: "handouts",
    title: "Handouts",
    ofOnePupil: true,
    load: async () => (await import(/* webpackChunkName: "handouts" */ "./handouts-view")).makeHandoutsView(),
  },
  {
    name: "reading",
    title: "Read aloud",
    ofOnePupil: true,
    load: async () => (await import(/* webpackChunkName: "reading" */ "./reading-view")).makeReadingView(),
  },
  {
    name: "naming",
    title: "Signs named",
    ofOnePupil: true,
    load: async () => (await import(/* webpackChunkName: "naming" */ "./naming-view")).makeNamingView(),
  },
  {
    name: "brailled",
    title: "Heard and brailled",
    ofOnePupil: true,
    load: async () => (await import(/* webpackChunkName: "brailled" */ "./brailled-view")).makeBrailledView(),
  },
  {
    name: "report",
    title: "Report",
    ofOnePupil: true,
    load: async () => (await import(/* webpackChunkName: "report" */ "./report-view")).makeReportView(),
  },
  {
    name: "workbook",
    title: "Workbook",
    ofOnePupil: false,
    load: async () => (await import(/* webpackChunkName: "workbook" */ "./workbook-view")).makeWorkbookView(),
  },
];
