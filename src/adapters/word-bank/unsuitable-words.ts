/**
 * Words of violence, alcohol, drugs and sex that lists of bad words let pass: our own choice, for material that goes to
 * children. To leave too much out costs a drill nothing, so ordinary words that are mostly used otherwise go as well.
 * Lists of bad words mostly hold one form of each; their other forms go with them.
 */
const listed = (list: string): readonly string[] => list.trim().split(/\s+/);

/** Left out with their usual endings. */
const STEMS = listed(`
kill slay slayer slaughter murder assassin assassinate assassination massacre execute executioner shoot shooter
shootout gun gunman gunmen gunshot gunfire gunfight gunpoint gunpowder gunslinger handgun shotgun firearm firepower
rifle revolver bullet bulletproof ammo ammunition weapon weaponry bomb bomber bombard bombshell grenade missile warhead
explode explosion explosive dynamite stab strangle choke suffocate suffocation behead decapitate decapitation dismember
mutilate mutilation maim corpse cadaver carcass blood bloody bloodbath bloodshed bloodstain bleed bled gore gory
hostage kidnap kidnapper kidnapped kidnapping abduct abduction hijack ransom terror terrorist terrorism terrorize
suicide suicidal homicide homicidal manslaughter autopsy morgue mortuary hitman hitmen sniper assault torture torturer
lynch gallows noose guillotine electrocute electrocution genocide holocaust nazi nuke machete dagger switchblade
cutthroat psychopath psycho maniac violence violent violently cannibal cannibalism vampire zombie slasher crucify
crucifixion impale bludgeon dead deadly death deathbed died dying funeral coffin casket corpse executioner rapist
alcohol alcoholic alcoholism beer wine winery whiskey whisky vodka gin rum tequila bourbon brandy cognac champagne
scotch liquor booze boozer boozy martini cocktail margarita daiquiri sherry lager brewery bartender bartending barmaid
barroom saloon tavern pub drunk drunkard drunken drunkenness hangover hungover tipsy intoxicate intoxication
intoxicated inebriate inebriated moonshine keg binge
drug druggie drugstore narcotic cocaine heroin opium opiate morphine meth methamphetamine amphetamine marijuana
cannabis hashish pothead stoner overdose addict addiction addictive junkie junky syringe cigarette cigar tobacco smoke
smoker nicotine ecstasy lsd
sex sexy sexist sexism sexual sexually sexuality bisexual homosexual homosexuality heterosexual transsexual erotic
erotica naked nakedness nude nudity nudist stripper striptease lingerie panty bra thong bikini underwear undress breast
boob nipple buttock bosom cleavage groin crotch penis vagina vaginal genital semen sperm condom contraceptive
contraception pregnant pregnancy abortion seduce seduction seductive seducer lust lustful lusty orgy orgasm prostitute
prostitution brothel hooker harlot mistress concubine pimp rape incest molest molester pervert perverted perversion
kinky fetish bondage foreplay intercourse virgin virginity horny aroused arousal adultery adulterer adulterous gigolo
lesbian playboy centerfold pornography porn porno masturbate ejaculate erection libido aphrodisiac puberty impotent
impotence menstrual menstruation tampon whore slut necrophilia necrophiliac
gunslinger undies urine urinate urinal loin womb hell hellhole midget wuss ballsy drugged opiates`);

/** What the stems and their endings would leave out by mistake. */
const INNOCENT: ReadonlySet<string> = new Set(
  listed(`
  luster rummy rumor sherries puberty gunner public scotches smoky killjoy bulletin heroines braid heller hells`),
);

/** Left out wherever these letters stand in a word. */
const ANYWHERE = /fuck|shit|nigg|cunt|bitch|whore|porn|goddam|asshole|masturbat|murder|suicid|bloodthirst/;

const AFTER_ANY = ["", "s", "es", "d", "ed", "r", "er", "ers", "ing", "ings", "y"];
const AFTER_DOUBLED = ["ed", "er", "ers", "ing", "ings", "y"];
const AFTER_DROPPED_E = ["ed", "er", "ers", "ing", "ings", "ion", "ions", "or", "ors"];

const formsOf = (stem: string): string[] => {
  const last = stem.slice(-1);
  const root = stem.slice(0, -1);
  if (last === "e")
    return [...AFTER_ANY.map((ending) => stem + ending), ...AFTER_DROPPED_E.map((end) => root + end)];
  if (last === "y") return [...AFTER_ANY.map((ending) => stem + ending), `${root}ies`, `${root}ied`];
  return [...AFTER_ANY, ...AFTER_DOUBLED.map((ending) => last + ending)].map((ending) => stem + ending);
};

const FORMS: ReadonlySet<string> = new Set(STEMS.flatMap(formsOf));

/** Words that are no forms of the bad words that they look like a form of. */
const NO_FORMS: ReadonlySet<string> = new Set(
  listed(`
  testing testings tested tester testers spicy spices spiced spicing scatter scatters shatter shatters spikes spiked spiky
  assess assessed assessing whiter radically trappings tangy pixies heroines dinky protestants pecking pecked pecks
  tinkering tinkered tinkerer vibratory deviled whopper whoppers flanged nooks simper simpers spited spiting kumquats
  jiggered crackers swallows swallowed swallowing trapped trapping`),
);

/**
 * The other forms of words that lists of bad words hold, such as their plurals.
 *
 * @param words - small letters, at least four; of shorter ones too many ordinary words look like forms
 */
export const formsOfBadWords = (words: Iterable<string>): ReadonlySet<string> => {
  const forms = new Set<string>();
  for (const word of words) {
    if (word.length < 4) continue;
    for (const form of formsOf(word)) if (!NO_FORMS.has(form)) forms.add(form);
  }
  return forms;
};

/**
 * Whether our own list leaves a word out.
 *
 * @param word - small letters
 */
export const isUnsuitable = (word: string): boolean =>
  ANYWHERE.test(word) || (FORMS.has(word) && !INNOCENT.has(word));
