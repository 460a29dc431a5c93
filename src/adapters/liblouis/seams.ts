/** First parts of learned compounds that end in o. */
const COMBINING_FORM =
  "(?:micr|macr|mon|nan|nitr|pseud|retr|electr|fluor|synchr|therm|phot|hydr|chlor|pyr|kil|vide|radi|aut|heter|prot|neur|aer|agr|cycl|gyr|psych|bi|ge|stere|phon|cry|turb|ferr|carb|cardi)o";

/**
 * Places inside words that no contraction may cross, where the UEB table of the build does not know of them. Each
 * entry is a class of words: a pattern with `~` at the seam, `^` and `$` at the start and the end of a word; the
 * characters beside `~` are plain letters.
 *
 * Source: The Rules of Unified English Braille, 2nd edition 2013, the section beside each group; which spellings
 * belong to a class is this project's own reading of them.
 */
export const SEAM_CLASSES: readonly string[] = [
  // 10.11.1 Compound words: h begins the second part.
  "[aeiouy][a-z]*(?<!^di)[stwgc]~h(?:ouse[ds]?|ousing)$",
  "[a-z]{2}[twg]~h(?:eads?$|eaded|earted|olders?$)",
  "[a-z]{2}(?<!thre)s~h(?:olders?$|eads?$|earted)",
  "[a-z]{2}t~h(?:ol(?:e[ds]?|ers?)$|earts?$|ooks?$|ills?$|eim|olm|ounds?$|angers?$|unt(?:er|ing|s?$)|urst|aired)",
  "(?:lef|righ|shor|fas|fla|ligh)t~hand",
  "^(?:po|fel|ho|sof)t~hats?$|straw~hat",
  "[a-z]{2}(?<!un)s~h(?:orns?$|ounds?$)",
  "[a-z]{2}s~h(?:aired|airs?$|atch|awks?$|ood$|eim|urst|opper)",
  "ss~h(?:ackle|oles?$|alls?$)",
  "^mis~h(?:a[nptb]|ea|i[tr]|e[al]|ou|u[mn])",
  "[a-z]{2}g~h(?:eap|ills?$|ounds?$|op|oles?$|urst|orns?$|oods?$)",
  "[aeo]w~h(?:oles?$|alls?$|ands?$|id(?:e|i)|ooks?$)",
  "c~hearted",
  "[a-z]s~thwaite",
  // 10.11.1 Compound words: t begins the second part after s.
  "[a-z]{2}s~town",
  "ss~t(?:ie|ree|alk|rack|ail|ime|own)",
  // 10.4.2, 10.8 The signs for tion and the before that for st (10.10.4).
  "(?<!que)s~tion",
  "[aeoiu]s~the(?:s[eit]|t|m)|[aeoiu]sthe~se",
  // 10.10.5 A strong sign before a lower one.
  "f~for|c~ch",
  // 10.6.5, 10.11.3 No ea across a prefix or between the parts of a compound word.
  "^(?:un|non)?pre~a(?!ch|k)",
  "^(?:un|non)?de~a(?:[bgqux]|va|cc|ci|ct|er|ff|i|l(?:at|[bck])|m[abinop]|na|nim|pp|rm[ei]|ri|rt[ih]|s[hps]|tt)",
  "^(?:un|non)?re~a(?:[bqx]|g(?!an)|u(?!m)|cc|ce|ch(?:iev|e[ng])|c[ikqt]|d(?:a[dpu]|d|h|j|m|o[pr]|v)|er|ff|fr|i[rmd]|l(?:ert|i[eg]|leg|loc|lu|ter)|m(?:as|en|pl|u)|n[ai]|nn|pp|po|pr|rr|rg|ro|s(?:[cpt]|k)|tt|v[ao]|wa|w[^fg])",
  "^re~aver(?:s|$)",
  "[a-z]re~act",
  "[aeiou][a-z]*e~a(?:way|gent|x)|[a-z]tle~ax",
  // 10.11.1 e before a second part that begins with d.
  "[a-z]{2}e~d(?:ales?$|ress|rop|own|igg|ow$)",
  // 10.11.1 name as the second part.
  "[a-z]{2}e~names?$",
  // 10.11.3, 10.11.8 No of, ow or mother across a combining form that ends in o.
  `${COMBINING_FORM}~f[^f]|${COMBINING_FORM}~w[aeo][artiv]`,
  "[a-z]{3}o~form(?:s?$|ed|ing)",
  "^co~f(?:i|a|o[ur])",
  "(?:ch?em|samm|rm|^hom|mm|lem|pneum|plasm|cosm|som)o~ther(?:ap|m)",
  "^co~n(?:ame|eigh|ati)",
  // 10.6.1 be as a syllable; dish, which has no dis.
  "^di~sh(?:[bcdfglmpwy]|ers?$|rag)|^di~sul",
  "^b~e(?:rets?$|rets?'|som(?:s?$|'))",
  // 10.7.6 one where it is one syllable, in -oney, and in honest and monetary.
  "[a-z](?<![cst]i)o~ne(?:[aou]|e|i|ct|ck(?:$|')|cro(?!p)|g[ai]|l$|l['s]|l[lo](?!y)|la(?:$|')|m(?:a(?:[te'l]|s?$)|e(?!a|n|d)|i|[pu])|n(?!ess)|p(?:h[rie]|i)|qu|s(?:e$|e'|i[as]|qu|sq?[^t]?(?:$|e)|c[ua]|k[s']?|th|s)|t(?:t|hy|ic|s?$|'|e|o|r|sk)|v(?!i)|x)",
  "(?:ph|t|p|l)o~net(?:ic|iz|is)",
  "oo~ne",
  "[a-z]{3}(?<!som)eo~ne(?:s?$|')|^(?:cl|d)eo~ne",
  "(?:[lpgzv]i|uri|rmi|lcy|rr|ett|madr|padr|nzon?|rig|tig|iav|str|ic[ea]r|siph|anem|abal)o~ne(?:s?$|')",
  "^o~ne(?:i[lrd]|al|ga|gi|r[ao])",
  // 10.11.3 non as a prefix.
  "^non~e(?!s$|such|t(?:h|s?$|t)|$|')",
  "^(?:un)?non~g",
  // 10.11.1 ng across a seam; gh kept whole.
  "[a-z]n~g(?:rass|row|lad)",
  // 10.8 No ence in words made from Greek encephal-.
  "en~ceph",
  // 10.7.3 here, name, some, time, ever, day where they are no syllable by themselves.
  "h~ere(?:n[cdt]|t[ir]|d[ai])|(?<!t)h~eres(?:y|i[ae]|es)|^adh~er(?:e[drn]|i)|[a-z](?<!t)h~erer",
  "ph~ere(?:d|mi|s[ei]|t|n|r)|co?inh~ere",
  "n~ame(?:n[aet]|ric|tr)|[^e]n~amen",
  "s~omet(?:r|er)|s~omever|[a-z](?<![dlre])s~omer(?!s[et])",
  "t~imen|m~ention",
  "ie~ver|e~ver(?:b(?!ach)|eren?[^n]|s(?:al|e|i|o$)|nia)|(?:^|r|nt|n)e~vert(?!on|h)",
  "^(?:un)?re~ver(?:ed|er|s)|^(?:un)?e~vers",
  "se~ver(?:it|e(?:$|'|ly|st|r$|ness))|perse~ver(?:e|i|an)",
  "d~aya",
];

/** A place where a seam may lie, after what leads up to it. */
interface SeamRule {
  readonly before: RegExp;
  readonly after: RegExp;
}

/** Words are told apart by what is no letter a to z, so that 's and 'd are endings. */
const EDGES: readonly (readonly [RegExp, string])[] = [
  [/\^(?![^[\]]*\])/g, "(?<![a-z])"],
  [/\$(?![^[\]]*\])/g, "(?![a-z])"],
];

/** The alternatives of a pattern outside all brackets. */
const splitAlternatives = (pattern: string): string[] => {
  const alternatives: string[] = [];
  let depth = 0;
  let start = 0;
  for (let index = 0; index < pattern.length; index += 1) {
    const character = pattern.charAt(index);
    if ("([".includes(character)) depth += 1;
    else if (")]".includes(character)) depth -= 1;
    else if (character === "|" && depth === 0) {
      alternatives.push(pattern.slice(start, index));
      start = index + 1;
    }
  }
  return [...alternatives, pattern.slice(start)];
};

/** The letters that a pattern ends with: one, or those of a class. */
const lastLetters = (pattern: string): string =>
  pattern.endsWith("]") ? pattern.slice(pattern.lastIndexOf("[") + 1, -1) : pattern.slice(-1);

/** The rules by the two letters beside the seam, so that most places in a text ask none. */
const rulesByPair = new Map<string, SeamRule[]>();
for (const alternative of SEAM_CLASSES.flatMap(splitAlternatives)) {
  const anchored = EDGES.reduce((pattern, [edge, look]) => pattern.replaceAll(edge, look), alternative);
  const [before = "", after = ""] = anchored.split("~");
  const rule: SeamRule = { before: new RegExp(`(?<=${before})`, "y"), after: new RegExp(after, "y") };
  for (const letter of lastLetters(before)) {
    const pair = letter + after.charAt(0);
    rulesByPair.set(pair, [...(rulesByPair.get(pair) ?? []), rule]);
  }
}

/**
 * The places in a text that no contraction may cross.
 *
 * @param text - print; case does not matter
 * @returns indices of the characters that begin a part, smallest first
 */
export const findSeams = (text: string): number[] => {
  const lower = text.toLowerCase();
  // Only where lower case changes no length (İ) are the places those of the text.
  if (lower.length !== text.length) return [];
  const seams: number[] = [];
  for (let index = 1; index < lower.length; index += 1) {
    const rules = rulesByPair.get(lower.slice(index - 1, index + 1));
    if (rules?.some((rule) => matchesAt(rule.after, lower, index) && matchesAt(rule.before, lower, index)))
      seams.push(index);
  }
  return seams;
};

const matchesAt = (pattern: RegExp, text: string, index: number): boolean => {
  pattern.lastIndex = index;
  return pattern.test(text);
};
