import { tidyText } from "./cell-text";
import type { AnyKind } from "./column-kind";
import { normaliseHeader } from "./header-text";

/** How strongly a header speaks for one meaning, from 0 to 1. */
export type HeaderMatch = ReadonlyMap<AnyKind, number>;

type Rule = readonly [AnyKind, number, RegExp];

/**
 * Header words by meaning, matched against {@link normaliseHeader}; the strongest rule of each meaning counts.
 *
 * Source: common practice, no source.
 */
const RULES: readonly Rule[] = [
  // Known columns that are none of ours, or would be mistaken for one of ours.
  [
    "other",
    1,
    /\b(birth|dob|born|teacher|tutor|examiner|tester|assessor|staff|school|district|class|parent|phone|email|address|age|year group|school year|room|observer|scorer|recorder|completed|signed|instructor|tvi|initial teacher)\b(?!.*\b(note|comment|observation|remark)\b)/,
  ],
  [
    "other",
    1,
    /^(time day|start time|end time|time started|time start|time end|finish time|time finished|time in|time out|clock|am pm|hour|hourly|lesson time|session time slot|period)$/,
  ],
  [
    "other",
    1,
    /\berror rate\b|\bpercent (error|mistake|miscue|wrong|incorrect)|\b(error|mistake|miscue) (percent|per minute|ratio)|\b(epm|ewpm)\b|\bself correction|^sc$|^self corr|^insertion|^repetition|^hesitation|^comprehension|^retell|^hand use$|^hands?$|^wait\b|^line$|^per line$|cell per line|^dot$|^braille$|^braille cell$/,
  ],
  [
    "other",
    0.9,
    /^(session|lesson|probe|trial|row|week|record|entry|item|test|visit|question|run) ?(id|nr)?$|^(session|lesson|week|probe) ?no$|^q$|^id$/,
  ],
  [
    "other",
    0.95,
    /\b(next|review|due|check again|maintenance|mastered|mastery|baseline|benchmark|norm|percentile|average|mean|median|running|rolling|cumulative|previous|last|latest|most recent|change|gain|growth|difference|diff|trend|slope|aimline|aim line|expected rate|on track|verdict|status|held|planned)\b/,
  ],
  ["position", 1, /^(position|word position|place|at word)$/],
  [
    "error kind",
    1,
    /^(kind|type|kind error|type error|error type|error kind|miscue type|type miscue|kind miscue|error category|category)$/,
  ],

  ["date", 1, /^date$/],
  [
    "date",
    0.95,
    /^(probe|test|testing|session|assessment|assessed|reading|lesson|check|measurement|trial|observation|data) date$|^date (probe|test|tested|session|assessment|assessed|read|lesson|given|taken|done|measured|collected|reading|trial|observation|seen|administered|time|recorded|observed|work|activity|data|check|checked|dmy|mdy|dd mm yyyy|mm dd yyyy|dd mm yy|mm dd yy|d m y|m d y|yyyy mm dd)$/,
  ],
  ["date", 0.75, /\bdate\b/],
  [
    "date",
    0.8,
    /^(when|day|day date|date day|on|tested|tested on|read on|done on|probe day|d|datum|week beginning|week commencing|week starting|week start|week ending|week end|beginning|w c|w b|w e|wc|wb|session day|test day)$/,
  ],
  ["date", 0.6, /^(week|session|probe|test|assessment|lesson|month)$/],

  ["pupil", 1, /^(pupil|student|child|learner|reader)$/],
  [
    "pupil",
    0.95,
    /^(pupil|student|child|learner|reader) (name|code|id|initial|ref|reference|no|nr|number|identifier)$|^(name|code|id|initial|code name) (pupil|student|child|learner|reader)$/,
  ],
  [
    "pupil",
    0.9,
    /^(name|kid|who|initial|participant|youngster|boy girl|first name|forename|full name|given name|surname|pupil student|student pupil|trainee|client|nickname|code name|pseudonym|bird|scholar|student name first|case|subject id)$/,
  ],
  ["pupil", 0.7, /\b(pupil|student|child|learner)\b(?!.*\b(response|answer|copy|said|wrote|read)\b)/],
  ["pupil", 0.4, /^(code|id|ref|reference|subject|person|reader id|no|nr)$/],

  [
    "task",
    1,
    /^(task|activity|skill|probe type|type probe|task type|test type|type test|kind probe|kind task|exercise|what did|what done|assessment type|type assessment|measure type)$/,
  ],
  [
    "task",
    0.8,
    /^(type|kind|probe|test|assessment|area|skill area|mode task|subtest|domain|objective|what|measure|skill tested|probe name|test name|drill|work|task done|worked on|focus|focus skill|procedure|probe kind)$/,
  ],
  ["task", 0.7, /\b(task|activity|skill)\b/],

  [
    "sign",
    1,
    /^(sign|letter|contraction|braille sign|symbol|groupsign|wordsign|shortform|character|braille letter|sign taught|sign tested|target sign|letter sign|sign letter|letter contraction|contraction letter|target letter|target contraction|braille symbol|braille character|braille contraction|letter name|grapheme|sign named|letter tested|contraction tested|letter cell|sign probed|letter probed|contraction probed)$/,
  ],
  [
    "sign",
    0.75,
    /^(item|sound|cell|target|alphabet|word sign|group sign|contraction word|what sign|which sign|which letter|digraph|braille unit|element|stimulus|card|sign card|letter card|flash card|flashcard)$/,
  ],
  ["sign", 0.7, /\b(sign|letter|contraction|symbol)\b/],

  [
    "material",
    1,
    /^(material|passage|story|book|text|passage read|book title|story title|passage title|passage name|title|reading passage|reading material|selection|word list|list|text read|story read|book read|title passage|title book|name passage|passage book|book passage|story passage|material used|extract|fable|poem|article|chapter|page|unit story|lesson story|passage no|passage id|reading book|story book|storybook|book story|set|word set|list used|list no|form|probe form|source|sentence|paragraph|material read)$/,
  ],
  ["material", 0.75, /\b(passage|story|book|material|title|extract)\b/],
  ["material", 0.85, /^what read$/],
  ["response", 0.8, /^what read$/],
  [
    "material",
    0.6,
    /^(reading|read|level text|what|probe|probe name|test name|content|words used|words list|worksheet|sheet|deck|card set)$/,
  ],

  [
    "words",
    1,
    /^(word|word read|word attempted|attempted word|total word|word total|word count|count word|word tried|tw|twr|wr|total word read|word read total|word read aloud|how many word|word attempted total|wa|word covered|word presented|total word attempted|word given|all word|word tested|w read)$/,
  ],
  [
    "words",
    0.75,
    /\bword\b(?!.*\b(correct|right|list|per minute|wrong|missed|error|incorrect|set|sign|misread|known|set|used|shown|asked|target|expected)\b)/,
  ],

  [
    "errors",
    1,
    /^(error|mistake|miscue|error made|mistake made|total error|error total|word error|error word|reading error|misreading|misread|wrong|incorrect|miss|missed|how many error|error count|count error|word wrong|word missed|word incorrect|word misread|wrong word|incorrect word|missed word|misread word|error miscue|miscue error|mistake error|error mistake|incorrect response|wrong answer|e|slip|total miscue|total mistake|nwrong|blunder|uncorrected error|got wrong|sign wrong|letter wrong|not correct|word not read|fault|minus)$/,
  ],
  [
    "errors",
    0.8,
    /\b(error|mistake|miscue|misreading)\b(?!.*\b(rate|type|kind|note|analysis|list|pattern|example)\b)/,
  ],
  ["errors", 0.75, /\b(wrong|incorrect|misread|missed)\b/],

  [
    "correct",
    1,
    /^(correct|right|correct word|word correct|word right|word read correct|correct response|response correct|correct answer count|total correct|correct total|how many correct|how many right|sign correct|correct sign|letter correct|correct letter|contraction correct|trial correct|correct trial|wcr|wrc|wc|cw|nc|got right|hit|plus|sign named correct|letter named correct|cell correct|cell right|correct cell|item correct|correct item|correct count|count correct|sign right|letter right|score correct|right answer|answer right|answer correct|nright|total right|right total|sign known|letter known|successful|success|correct trial count|correct out|got|known|named|named correct|independent correct|correct independent|correct sign count|c|word read right|sign read correct|letter read correct|number right)$/,
  ],
  ["correct", 0.8, /\b(correct|right)\b(?!.*\b(per minute|percent|rate|accuracy|wpm|answer text)\b)/],
  ["correct", 0.45, /^(trial|mark|result|response|trial data|data|independent)$/],

  [
    "opportunities",
    1,
    /^(opportunity|out|total trial|trial total|trial|total|possible|total possible|possible correct|max|maximum|max score|total opportunity|presented|total presented|asked|number asked|total asked|total sign|sign total|total letter|letter total|sign presented|letter presented|sign shown|letter shown|shown|total shown|trial given|item|total item|question|total question|sign tested|opportunity given|opportunity respond|count|n|total number|total count|presentation|contraction total|total contraction|sign asked|letter asked|number item|item total|tried|given|sign attempted|letter attempted|trial attempted|item attempted|total attempted sign|card shown|card|total card|chance|denominator|cell total|total cell|how many asked|how many shown|sign given|total given|possible point)$/,
  ],
  [
    "opportunities",
    0.9,
    /^(attempted|total attempted|attempted total|number attempted|how many attempted|tried)$/,
  ],
  ["opportunities", 0.7, /\b(opportunity|trial|presented|possible|out)\b|^total\b|\btotal$/],
  ["opportunities", 0.5, /^(sign|letter|contraction|cell|symbol)$/],

  [
    "seconds",
    1,
    /^(second|minsec|time minsec|time second|second time|s|time s|duration second|second taken|time taken second|time taken minsec|reading time second|reading time minsec|duration minsec|total second|elapsed second|timing second|time read second|length second|second used|time m s|time sec|duration s|minsec taken|minsec time|second read|reading second|timer second|time total second|time used second)$/,
  ],
  [
    "seconds",
    0.9,
    /^(time|duration|time taken|reading time|timing|elapsed|elapsed time|how long|length time|time elapsed|total time|time read|time used|stopwatch|timer|read time|time spent|time task|completion time|time needed|time reading|took|time complete|time hourmin|duration hourmin|hourmin|time on task|clocked)$/,
  ],
  ["seconds", 0.8, /\bminsec\b|\bsecond\b/],
  ["seconds", 0.6, /\btime\b|\bduration\b/],
  ["seconds", 0.4, /\bminute\b/],

  [
    "minutes",
    1,
    /^(minute|time minute|minute time|m|time m|duration minute|time taken minute|minute taken|reading time minute|total minute|elapsed minute|timing minute|length minute|minute read|minute used|time read minute|duration m|minute reading)$/,
  ],
  ["minutes", 0.75, /\bminute\b(?<!per minute)/],
  [
    "minutes",
    0.5,
    /^(time|duration|time taken|reading time|timing|elapsed|length time|total time|how long)$/,
  ],

  [
    "rate",
    1,
    /\b(wcpm|cwpm|wrcpm|crwpm|wcm|wrpm|wpmc|clpm|lcpm|scpm|cspm|lnpm|rwpm|ccpm)\b|\bcorrect(?:ly)?\b.*\bper minute\b/,
  ],
  // Beside a rate of words correct, a plain rate counts every word read: the correct one is the probe's rate.
  ["rate", 0.95, /\b(wpm|cpm|lpm|spm|orf|wordspm)\b|\bper minute\b/],
  [
    "rate",
    0.95,
    /^(rate|reading rate|speed|reading speed|fluency|reading fluency|oral reading rate|oral reading fluency|fluency rate|rate reading|wc m|w m|w p m|word min|word minute|correct minute|word correct minute|correct word minute|wc minute|cw minute|w minute|fluency score|pace|words1min|reading rate wpm|w c p m)$/,
  ],
  ["rate", 0.7, /\b(rate|speed|fluency)\b/],

  [
    "accuracy",
    1,
    /^(accuracy|percent|percent correct|correct percent|percent accuracy|accuracy percent|accuracy rate|percent right|right percent|reading accuracy|accuracy score|word accuracy|percent word correct|word correct percent|percent word read correct|reading accuracy percent|percent correct word|percent score|score percent|share correct|proportion correct|proportion|correct share|success rate|pc|percent independent|independent percent|percent correct response|ac)$/,
  ],
  ["accuracy", 0.8, /\b(accuracy|percent)\b/],

  [
    "score",
    1,
    /^(score|result|point|mark|raw score|outcome|test score|probe score|total score|score total|probe result|test result|mark awarded|point earned|point score|score point|rating|grade score|scored|final score|score out|score raw)$/,
  ],
  ["score", 0.75, /\bscore\b|\bresult\b|\bpoint\b|\bmark\b/],
  [
    "score",
    0.6,
    /^(data|value|level|data point|achieved|performance|measure|count|observation|dv|frequency)$/,
  ],

  [
    "unit",
    1,
    /^(unit|unit counted|counted|counting unit|count what|what counted|unit measure|counted in|unit count|item type|type item|measured in)$/,
  ],

  [
    "code",
    1,
    /^(code|braille code|grade braille|braille grade|contracted|contracted uncontracted|uncontracted contracted|contraction level|braille type|type braille|kind braille|ueb|ueb grade|grade ueb|braille level|braille form|form braille|braille version|contracted y n|g1 g2|grade 1 2|ueb1 ueb2|con unc|contracted braille|braille kind|ueb code|code used|braille code used|code braille|grade 1 2 braille)$/,
  ],
  ["code", 0.8, /^(grade|gr|contraction used|version|level contraction)$/],
  ["code", 0.7, /\bbraille (grade|code|type|level)\b|\bcontracted\b/],

  [
    "medium",
    1,
    /^(medium|media|reading medium|reading media|format|reading format|mode|print braille|braille print|device|equipment|reading mode|learning medium|literacy medium|presentation medium|medium used|writing tool|tool|writing device|presented in|read in|how read|material format|mode reading|writing medium|machine|instrument|medium reading|primary medium)$/,
  ],
  ["medium", 0.7, /\b(medium|media|device)\b/],

  [
    "support",
    1,
    /^(support|prompt|prompting|help|assistance|level support|support level|prompt level|level prompt|level help|help level|help given|support given|prompt given|assistance given|level assistance|independence|level independence|independence level|cue|cueing|cuing|scaffold|scaffolding|aid|assist|prompt type|type prompt|type support|support type|kind help|help needed|support needed|prompt needed|prompt used|support used|prompted|helped|how much help|independent|independent prompted|guidance|level prompting|degree support|degree help|supported|prompt support|support prompt|adult help|adult support|amount help|amount support|prompting level|help received|assisted|physical prompt|unaided)$/,
  ],
  ["support", 0.75, /\b(prompt|support|help|assistance|independence)\b/],

  [
    "expected",
    1,
    /^(expected|expected text|expected word|target word|word target|word shown|stimulus word|dictated|dictated text|dictated word|text given|word asked|expected answer|expected response|target text|model|given text|correct answer|target response|printed word|prompt word|text dictated|passage text|text expected|word expected|what it said|text on page|what said page|actual word)$/,
  ],
  ["expected", 0.5, /^(target|stimulus|word|text|given|sentence|print|dictation)$/],

  [
    "response",
    1,
    /^(response|answer|heard|what heard|heard as|read as|pupil response|student response|response given|pupil answer|student answer|given answer|answer given|what pupil read|what student read|what child read|what pupil said|what student said|what child said|pupil wrote|student wrote|written|said|wrote|brailled|typed|produced|what pupil wrote|what student wrote|child response|learner response|actual response|what read aloud|transcript|what he read|what she read|pupil said|student said|pupil read|student read|child read|child said|what i heard|what written|what brailled|copied|response text|reading heard)$/,
  ],
  ["response", 0.75, /\b(response|answer|heard)\b(?!.*\b(correct|incorrect|number)\b)/],

  [
    "phase",
    1,
    /^(phase|condition|phase condition|condition phase|intervention|treatment|intervention phase|phase name|phase label|teaching phase|ab|a b|study phase|experimental condition|method|teaching method|approach|strategy|programme|program|what tried|intervention used|teaching approach|phase intervention|stage|stage teaching|teaching condition|baseline intervention|phase change|new teaching)$/,
  ],
  ["phase", 0.75, /\b(phase|condition|intervention)\b/],

  [
    "comprehension",
    1,
    /^(comprehension|comprehension (question|answer|score|check|asked|correct)|understanding|question answered)$/,
  ],

  [
    "note",
    1,
    /^(note|comment|remark|observation|other|note comment|comment note|teacher note|teacher comment|other note|anecdotal|anecdotal note|annotation|memo|additional comment|additional note|general note|general comment|further comment|note observation|observation note|comment observation|detail|feedback|miscellaneous|reason|explanation|what happened|error note|comment error|error analysis|remarks comment|narrative)$/,
  ],
  ["note", 0.8, /\b(note|comment|remark)\b/],

  // Goals and taught lists.
  [
    "goalScore",
    1,
    /^(goal|target|aim|goal score|target score|aim score|goal rate|target rate|goal level|target level|goal wcpm|goal wpm|target wcpm|target wpm|aim wcpm|aim rate|score aimed|annual goal score|end goal|final goal|goal value|target value|goal percent|target percent|goal accuracy|target accuracy|year end goal|end score|goal word per minute|target word per minute|aim value|desired score|goal number|target number|goal amount|goal figure)$/,
  ],
  [
    "goalDate",
    1,
    /^(goal date|target date|aim date|due|due date|date goal|date target|end date|date end|by when|review date|goal due|target by|goal by|deadline|finish date|date due|annual review|annual review date|end|plan end|goal end|goal end date|target end date|finish|date achieved by|expected date|date met)$/,
  ],
  [
    "startScore",
    1,
    /^(start score|baseline|baseline score|starting score|baseline rate|baseline level|start rate|starting rate|start level|starting level|current level|present level|initial score|baseline wcpm|baseline wpm|start wcpm|start wpm|starting point|start value|baseline value|first score|beginning score|score start|score now|present score|current score|starting wcpm|baseline median|baseline percent|start percent|entry score|baseline accuracy)$/,
  ],
  [
    "startDate",
    1,
    /^(start date|date start|baseline date|date baseline|starting date|start|from|began|begin date|set on|date set|goal start|goal start date|plan start|beginning date|started|date started|initial date|date goal set|goal set|starting|since|written on|date written)$/,
  ],
  [
    "text",
    1,
    /^(goal text|goal text .*|goal plan|goal wording|goal statement|wording|goal description|description|goal written|goal from plan|goal words|iep goal|annual goal|goal as written|objective|target text|measurable goal|measurable annual goal|goal wording plan|goal description .*|goal from plan|goal iep|goal sentence)$|^goal.*\bplan\b/,
  ],
  [
    "measure",
    1,
    /^(measure|measured|measured by|measure used|measured as|score type|type score|metric|goal measure|what measured|kind score|how measured|measurement)$/,
  ],
  [
    "criterion",
    1,
    /^(criterion|criteria|mastery criterion|mastery criteria|success criterion|success criteria|criterion level)$/,
  ],
  [
    "introduced",
    1,
    /^(introduced|date introduced|introduced on|taught|date taught|taught on|first taught|learned|date learned|learnt|date learnt|intro date|introduction date|date introduction|start teaching|date first taught|known since|since when|when taught|when introduced)$/,
  ],
];

const BY = /^\W*by(?: when| date)?\W*$/i;
const known = new Map<string, HeaderMatch>();

/**
 * What a header may mean and how strongly it says so. Units in brackets count with the header; the words before a
 * bracket alone are tried too, so that "Errors (see key)" is still errors.
 */
export function matchHeader(header: string): HeaderMatch {
  const found = known.get(header);
  if (found) return found;
  const match = new Map<AnyKind, number>();
  const add = (text: string, factor: number): void => {
    const words = normaliseHeader(text);
    if (words === "") return;
    for (const [kind, strength, pattern] of RULES) {
      if (strength * factor > (match.get(kind) ?? 0) && pattern.test(words))
        match.set(kind, strength * factor);
    }
  };
  const tidy = tidyText(header);
  add(tidy, 1);
  const bare = tidy.replace(/[([{][^)\]}]*[)\]}]?/g, " ").trim();
  if (bare !== tidy) add(bare, 0.85);
  // "or", "and", "/" between two names of one thing: "Mistakes / miscues", "Student or pupil".
  for (const part of bare.split(/\/| or | and | - |: /i))
    if (part !== bare && part.trim().length > 2) add(part, 0.7);
  if (BY.test(tidy)) match.set("goalDate", 1);
  if (known.size > 5000) known.clear();
  known.set(header, match);
  return match;
}

/** The strongest meaning of a header, or undefined where it says nothing. */
export function bestMatch(header: string): { readonly kind: AnyKind; readonly strength: number } | undefined {
  let best: { kind: AnyKind; strength: number } | undefined;
  for (const [kind, strength] of matchHeader(header))
    if (!best || strength > best.strength) best = { kind, strength };
  return best;
}
