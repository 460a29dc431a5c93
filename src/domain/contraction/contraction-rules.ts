/**
 * The contractions of Unified English Braille as the rules list them: print and dots.
 * Source: The Rules of Unified English Braille, 2nd edition 2013 (ICEB), section beside each.
 */

/** Section 10.1: each is its own letter's cell; `it`, `you`, `as` take x, y, z. */
export const ALPHABETIC_WORDSIGNS = `
but 12, can 14, do 145, every 15, from 124, go 1245, have 125, just 245, knowledge 13, like 123, more 134,
not 1345, people 1234, quite 12345, rather 1235, so 234, that 2345, us 136, very 1236, will 2456, it 1346,
you 13456, as 1356`;

/** Section 10.2 */
export const STRONG_WORDSIGNS = "child 16, shall 146, this 1456, which 156, out 1256, still 34";

/** Section 10.3 */
export const STRONG_CONTRACTIONS = "and 12346, for 123456, of 12356, the 2346, with 23456";

/** Section 10.4; `ing` not at the beginning of a word (10.4.3) */
export const STRONG_GROUPSIGNS = {
  anywhere: "ch 16, gh 126, sh 146, th 1456, wh 156, ed 1246, er 12456, ou 1256, ow 246, st 34, ar 345",
  notAtStart: "ing 346",
};

/** Section 10.5 */
export const LOWER_WORDSIGNS = "be 23, enough 26, were 2356, his 236, in 35, was 356";

/** Section 10.6 */
export const LOWER_GROUPSIGNS = {
  firstSyllable: "be 23, con 25, dis 256",
  betweenLetters: "ea 2, bb 23, cc 25, ff 235, gg 2356",
  anywhere: "en 26, in 35",
};

/** Section 10.7: dots 4-5, then 4-5-6, then 5 before the initial */
export const INITIAL_LETTER_CONTRACTIONS = `
upon 45-136, these 45-2346, those 45-1456, whose 45-156, word 45-2456,
cannot 456-14, had 456-125, many 456-134, spirit 456-234, their 456-2346, world 456-2456,
day 5-145, ever 5-15, father 5-124, here 5-125, know 5-13, lord 5-123, mother 5-134, name 5-1345, one 5-135,
part 5-1234, question 5-12345, right 5-1235, some 5-234, time 5-2345, under 5-136, young 5-13456,
there 5-2346, character 5-16, through 5-1456, where 5-156, ought 5-1256, work 5-2456`;

/** Section 10.8: dots 4-6, then 5-6 before the last letter */
export const FINAL_LETTER_GROUPSIGNS = `
ound 46-145, ance 46-15, sion 46-1345, less 46-234, ount 46-2345,
ence 56-15, ong 56-1245, ful 56-123, tion 56-1345, ness 56-234, ment 56-2345, ity 56-13456`;

/** Section 10.9 and appendix 1; the starred also in longer words outside its list (10.9.3) */
export const SHORTFORMS = `
about ab, above abv, according ac, across acr, after af, afternoon afn, afterward afw, again ag, against ag(st),
also al, almost alm, already alr, altogether alt, although al(th), always alw, blind bl *, braille brl *,
could cd, declare dcl, declaring dclg, deceive dcv, deceiving dcvg, either ei, friend fr *, first f(st) *,
good gd *, great grt *, him hm, himself hmf, herself h(er)f, immediate imm, little ll *, letter lr *, myself myf,
much m(ch), must m(st), necessary nec, neither nei, paid pd, perceive p(er)cv, perceiving p(er)cvg,
perhaps p(er)h, quick qk *, receive rcv, receiving rcvg, rejoice rjc, rejoicing rjcg, said sd, such s(ch),
today td, together tgr, tomorrow tm, tonight tn, itself xf, its xs, your yr, yourself yrf, yourselves yrvs,
themselves (the)mvs, children (ch)n *, should (sh)d, thyself (th)yf, ourselves (ou)rvs, would wd,
because (be)c, before (be)f, behind (be)h, below (be)l, beneath (be)n, beside (be)s, between (be)t,
beyond (be)y, conceive (con)cv, conceiving (con)cvg, oneself (one)f`;
