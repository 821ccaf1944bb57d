#!/usr/bin/env python3
"""Who is refused, or finds food stopped, reads what to do next: every sentence of a refusal and of a stop tells it.

The sentences are those whose message stands in a call that refuses or stops (`REFUSES`). Each, in both languages,
has a word that tells somebody to do something, or asks which of two it is, or names what would do (a bound, the
words that are known). Those that need nothing of it stand in told.tsv with the reason; none there may be needless.
"""

import re
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SOURCES = ["schema/domain/src", "server/src", "server/labels/src"]
CATALOGUE = ROOT / "server/words/catalogue"
LIST = Path(__file__).with_name("told.tsv")

REFUSES = ["cannot_be(", "Refusal::new(", "Refusal::limit(", "broken(", "Problem::new(", "Error::new(", "Stop::computed("]
AREA = re.compile(r'(\w+) in "([\w-]+)" \{')
VARIANT = re.compile(r'\b([A-Z]\w*) "([\w-]+)"')
MESSAGE = re.compile(r"\b(\w+Says)::(\w+)")

DO = """add ask begin buy call change check choose come confirm connect cook cool correct count discard do end enter fill
find follow give go have keep leave let look lower make mark measure mend move name open order print pull put raise read
receive record release reload remove rinse say scan see send set show sign split start stop take tell test thaw try turn
type use void wait weigh write""".split()
ENGLISH = re.compile(r"(?:^|[.;:,}] |\b(?:or|and|then|else|please) )(?:%s)\b" % "|".join(DO), re.I)
FRENCH = re.compile(r"\b(?!assez\b|chez\b|nez\b)\w+ez\b|\b(?:faites|dites|soyez|il faut|choisir|envoyer)\b", re.I)
WOULD_DO = re.compile(
    r"\?|(?:are|is|known|here|of|il y a|sont|ici|de|connaît)\s?:|\d à |\b1 to |between|entre|at (?:most|least)|\bau (?:plus|moins)\b"
    r"|lies|like |comme |capital letters|majuscules|digits|chiffres|or 300|ou 300|takes|accepte|prend|must be|doit"
    r"|no more than|pas plus|more than nothing|supérieure? à|ends at|goes from|cela va|s’arrête",
    re.I,
)


def call(text, at):
    """What stands between the bracket before `at` and the one that closes it."""
    depth = 1
    for place in range(at, len(text)):
        depth += {"(": 1, ")": -1}.get(text[place], 0)
        if depth == 0:
            return text[at:place]
    return text[at:]


def areas(texts):
    """The keys of every message, by its enum and variant."""
    known = {}
    for text in texts:
        for block in re.findall(r"messages! \{(.*?)\n\}", text, re.S):
            if named := AREA.search(block):
                for variant, key in VARIANT.findall(block[named.end() :]):
                    known[named[1], variant] = f"{named[2]}-{key}"
    return known


def refused(texts, known):
    """The keys of what is said where something is refused or stopped."""
    found = set()
    for text in texts:
        text = text.split("#[cfg(test)]")[0]
        for function in re.split(r"\n(?=(?: {4})?(?:pub(?:\([\w:]+\))? )?(?:const |async )?fn )", text):
            for name in REFUSES:
                for place in re.finditer(re.escape(name), function):
                    inside = call(function, place.end())
                    said = MESSAGE.findall(inside)
                    if not said:
                        # It was given a name before.
                        for word in set(re.findall(r"\b\w+\b", inside)):
                            bound = rf"let {word}(?:: \w+)? = (.*?);\n"
                            for given in re.findall(bound, function[: place.start()], re.S):
                                said += MESSAGE.findall(given)
                    found |= {known[one] for one in said if one in known}
    return found


def catalogue(language):
    """Each sentence by its key, its lines in one."""
    sentences, key = {}, None
    for line in (CATALOGUE / f"{language}.ftl").read_text(encoding="utf-8").split("\n"):
        if begun := re.match(r"([\w-]+) = ?(.*)", line):
            key = begun[1]
            sentences[key] = begun[2]
        elif key and line.startswith(" "):
            sentences[key] += " " + line.strip()
        else:
            key = None
    return sentences


def main():
    texts = [path.read_text(encoding="utf-8") for of in SOURCES for path in sorted((ROOT / of).rglob("*.rs"))]
    said = refused(texts, areas(texts))
    english, french = catalogue("en"), catalogue("fr")
    if len(said) < 300:
        sys.exit(f"only {len(said)} refusals were found: the guard does not read the code any more")
    silent = {key for key in said if not (ENGLISH.search(english.get(key, "")) or WOULD_DO.search(english.get(key, "")))}
    silent |= {key for key in said if not (FRENCH.search(french.get(key, "")) or WOULD_DO.search(french.get(key, "")))}
    silent = {key for key in silent if not key.startswith("title-")}
    excused = dict(line.split("\t", 1) for line in LIST.read_text(encoding="utf-8").splitlines() if line)
    for key in sorted(silent - excused.keys()):
        print(f"{key} does not tell what to do: {english.get(key)} | {french.get(key)}")
    for key in sorted(excused.keys() - silent):
        print(f"{key} stands in told.tsv, and need not")
    sys.exit(1 if silent ^ excused.keys() else 0)


if __name__ == "__main__":
    main()
