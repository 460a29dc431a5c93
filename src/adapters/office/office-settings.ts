import { formatSettings, parseSettings, SETTINGS_NAMESPACE } from "./settings-part";

interface Part {
  readonly part: Excel.CustomXmlPart;
  readonly settings: Map<string, string>;
}

/** The parts of our namespace: one, unless the workbook was put together from two. */
async function loadParts(context: Excel.RequestContext): Promise<readonly Part[]> {
  const parts = context.workbook.customXmlParts.getByNamespace(SETTINGS_NAMESPACE);
  parts.load("items/id");
  await context.sync();
  const asked = parts.items.map((part) => ({ part, xml: part.getXml() }));
  if (asked.length > 0) await context.sync();
  return asked.map(({ part, xml }) => ({ part, settings: parseSettings(xml.value) }));
}

/** The setting under this key, kept in the document as a custom XML part that other hosts read too. */
export async function readDocumentSetting(
  context: Excel.RequestContext,
  key: string,
): Promise<string | undefined> {
  const parts = await loadParts(context);
  return parts.find(({ settings }) => settings.has(key))?.settings.get(key);
}

/** Keeps a setting in the part that has it, else in the first, else in a new one. Queued without the last sync. */
export async function keepDocumentSetting(
  context: Excel.RequestContext,
  onRefusal: (takeBack: () => Promise<void>) => void,
  key: string,
  value: string,
): Promise<() => void> {
  const parts = await loadParts(context);
  const chosen = parts.find(({ settings }) => settings.has(key)) ?? parts[0];
  const xml = formatSettings(new Map([...(chosen?.settings ?? []), [key, value]]));
  if (chosen) {
    chosen.part.setXml(xml);
    onRefusal(async () => {
      chosen.part.setXml(formatSettings(chosen.settings));
      await context.sync();
    });
  } else {
    const added = context.workbook.customXmlParts.add(xml);
    onRefusal(async () => {
      added.delete();
      await context.sync();
    });
  }
  return () => undefined;
}
