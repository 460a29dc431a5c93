/** What the corpus of film subtitles does to words: it cuts them at apostrophes and prints sentence openers large. */

const words = (list: string): ReadonlySet<string> => new Set(list.trim().split(/\s+/));

/** Pieces of words with an apostrophe that are no words themselves; single letters are left out besides. */
export const FRAGMENTS: ReadonlySet<string> = words(`
ll re ve don didn doesn isn wasn couldn wouldn shouldn hasn haven hadn aren weren ain mustn needn shan mightn daren
oughtn em ol ma ya ha`);

/** Ordinary words that the corpus mostly meets at the beginning of a sentence or as an exclamation. */
export const SENTENCE_OPENERS: ReadonlySet<string> = words(`
false what no oh come how well yeah let why okay yes where hey thank maybe thanks hello hi listen ok miss excuse nobody shut
um ah bye hurry wow whoa perhaps goodbye general major hmm ooh besides yo chief congratulations holy pop north south
west east yep apparently plus gee however although according otherwise aw merry majesty freeze junior unfortunately
nah nope twenty amen central fifteen twelve thirty forty fourteen sixteen seventeen eighteen thirteen nineteen sixty
eighty ninety alright captain agent angel chief professor sergeant detective sheriff united aunt uncle president
lieutenant commander senator county inspector navy bay university valley knight marshal objection cheers subtitles
central cliff hunter dragon bishop knights spike shore turtle bunny previously meanwhile supreme almighty fortunately
eastern southern northern western avenue highness corporal admiral goodnight ace foundation transcript ambassador
baron academy hail foster hopefully harbor bureau mount announcer halt eagle ouch oops excellency praise mummy marine
marines canyon alliance association enterprise sustained hush communist shepherd ranger elder echo swan greetings
covenant commonwealth gypsy skinner senate whew incoming countess carpenter dolly behold nevertheless mayday evidently
curly hooray beware attaboy republic dusty constitution archer elders prophet boulevard trance shoo golly peacock thorn
herb columbus touchdown birdie rosemary hence beaver frost digger rangers affirmative gulf pearl cutter hamlet abort
dragons giants manning slater banner indistinct narrator amendment cardinal phantom chancellor chattering federation
ministry alas grove treasury biscuit eagles archbishop heave fluffy commodore likewise whereas democratic ensign
supposing berry mustang avalanche partridge overruled ivy nay rover falcon cobra rosy continental scarlet forge cove
correction fern squire foxy maestro preferably secondly junction yahoo armadillo cosmos furthermore dragonfly
nightingale moss baton deacon vista viking hawks baroness sparrow herald panther dynasty viper cedar legion sandman
voila frosty jaguar luckily incidentally weaver fletcher cape creek violet buffalo hawk porter cooper harmony hollow
granny grandma grandpa mom dad daddy mommy mama papa mum momma auntie doc sir madame thirdly firstly finally sadly
fifty seventy hundred thousand million`);
