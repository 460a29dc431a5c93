/** A passage for reading aloud. Retold for this project after Aesop, whose fables are in the public domain. */
export interface Fable {
  readonly title: string;
  readonly text: string;
}

export const FABLES: readonly Fable[] = [
  {
    title: "The Fox and the Grapes",
    text:
      "One hot day a fox was walking through a garden when he came to a bunch of grapes. They hung from a high " +
      "branch and they looked sweet and full of juice. That is just what I need, said the fox, for I have had " +
      "nothing to drink since this morning. He went back a few steps, ran, and jumped, but he could not reach the " +
      "fruit. He turned round and tried again, and then again. Every time he came down with nothing. At last he " +
      "gave up, put his nose in the air, and went on his way. I am sure those grapes are sour, he said. It is easy " +
      "to speak badly of something that you cannot have.",
  },
  {
    title: "The Crow and the Pitcher",
    text:
      "A thirsty crow found a tall pitcher with a little water at the bottom. She put her beak into it, but the " +
      "neck was narrow and the water was too far down. She pushed the pitcher, but it was too heavy to tip over. " +
      "Then she saw some small stones by the path. She picked one up and dropped it into the pitcher, and then " +
      "another, and another. With each stone the water came up a little. The crow worked on for a long time and " +
      "did not stop. In the end the water stood so high that she could drink as much as she wished. When we are in " +
      "need, good sense often does more for us than strength.",
  },
  {
    title: "The Lion and the Mouse",
    text:
      "A lion was asleep under a tree when a mouse ran across his paw and woke him. The lion caught her and was " +
      "about to eat her. Please let me go, said the mouse, and one day I will help you. The lion laughed, because " +
      "he could not think how such a small animal would ever help him, but he lifted his paw and let her go. Some " +
      "days later hunters caught the lion and tied him down with strong ropes. The mouse heard him roar. She ran " +
      "to him and began to bite through the ropes with her little teeth, and before long the lion was free. You " +
      "laughed at me, said the mouse, but even a small friend may be a great friend.",
  },
  {
    title: "The Hare and the Tortoise",
    text:
      "The hare was always laughing at the tortoise for being so slow. Do you ever get anywhere, she asked. Yes, " +
      "said the tortoise, and I get there sooner than you think. Let us run a race and see. The hare thought this " +
      "was a very good joke, and the fox was chosen to be the judge. Off they went. The hare was soon so far ahead " +
      "that she lay down in the grass to rest, and she fell asleep. The tortoise kept on walking, step after step, " +
      "and never once stopped. When the hare woke up she ran as fast as she could, but the tortoise was already " +
      "there. Slow and steady wins the race.",
  },
  {
    title: "The Ant and the Dove",
    text:
      "An ant went down to the river to drink and fell into the water. A dove sat in a tree just above. She saw " +
      "that the ant would drown, so she pulled off a leaf and let it drop beside him. The ant climbed on to the " +
      "leaf and was carried safely to the bank. A short time after that a man came under the tree with a net and " +
      "got ready to catch the dove. The ant saw what he wanted to do and bit him hard on the foot. The man cried " +
      "out and dropped his net, and the dove heard the noise and flew away. One good turn deserves another.",
  },
  {
    title: "The Dog and the Shadow",
    text:
      "A dog had been given a large piece of meat and was carrying it home in his mouth. On the way he had to cross " +
      "a plank over a quiet stream. As he looked down he saw his own shadow in the water below. He thought it was " +
      "another dog with another piece of meat, and it seemed to him that the other piece was larger. He made up " +
      "his mind to have that as well. So he opened his mouth and snapped at the shadow, and as he did so his own " +
      "meat fell into the stream and was carried away. Be careful that you do not lose what is real by reaching " +
      "for what is not.",
  },
];
