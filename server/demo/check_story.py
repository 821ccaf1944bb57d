#!/usr/bin/env python3
"""An independent book-keeper for the demo kitchen.

Run, from anywhere (plain Python 3.9 or later, nothing to install):

    python3 server/demo/check_story.py             checks cinderhook.json beside this file
    python3 server/demo/check_story.py OTHER.json  checks another copy
    python3 server/demo/check_story.py --stock     also lists all that is on hand at the end

It reads the kitchen, its lists and its deeds, keeps its own book of packs in whole milligrams, and judges:
every step balances; no pack goes below zero; a pack is used after it was made and never while frozen; deeds
stand in the order of their times; names are used once. Then it traces the recalled half pig (lot S10) forward
and asserts the table of the story: what was made, sold, plated, discarded and is on hand on 2026-06-26 at
10:40, each lot's share of S10, the sources of the mixes, what must stay clear, dates and allergens.
Every failure is printed; the exit code is 1 if there is one. It shares no code with the service on purpose.
"""
import json, re, sys
from datetime import date, datetime, timedelta
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

NOW = datetime.fromisoformat("2026-06-26T10:40:00-04:00")
STEP_KINDS = set("break-down cut cure turn rinse equalise hang smoke cook chill grind mix render portion pack".split())
RESETS = {"cook", "smoke", "cure", "render"}          # these start a date anew; the others keep the earliest of the parts
ADDED = {"water", "ice", "steam", "scale-difference"}
PEOPLE = {"Oda Marsh", "Pim Verrall", "Tamsin Roke", "Jory Abend", "Lise Hartnoll"}
CONTACT = {"bench", "cure-table", "grinder", "slicer"}

failures = []
def want(ok, text):
    if not ok: failures.append(text)
def same(what, got, expected):
    want(got == expected, f"{what}: {got!r} instead of {expected!r}")

def mg(grams):
    m = Decimal(str(grams)) * 1000
    want(m == m.to_integral_value() and m > 0, f"weight {grams} is not a positive number of whole milligrams")
    return int(m)
def kg(m): return f"{m / 1e6:.3f}"

class Pack:
    def __init__(self, left, place, state, use_by):
        self.left, self.place, self.state, self.use_by = left, place, state, use_by
        self.made, self.days_left = left, None
class Lot:
    def __init__(self, name, product, made, at):
        self.name, self.product, self.made, self.at = name, product, made, at
        self.packs, self.parents, self.animals, self.bought = [], [], {}, None
        self.sums = dict(used=0, sold=0, served=0, discarded=0, lost=0)
        self.units, self.back = dict(sold=0, served=0, discarded=0), 0
        self.allergens, self.species, self.step = set(), set(), None
    @property
    def on_hand(self): return sum(p.left for p in self.packs)
    @property
    def packs_on_hand(self): return sum(p.left > 0 for p in self.packs)
    @property
    def use_by(self):
        dates = [p.use_by for p in self.packs if p.left > 0 and p.use_by]
        return min(dates) if dates else None

file = next((a for a in sys.argv[1:] if not a.startswith("--")), Path(__file__).with_name("cinderhook.json"))
story = json.loads(Path(file).read_text(encoding="utf-8"), parse_float=Decimal)

# ---- lists -------------------------------------------------------------------------------------------------
lists = {}
for item in story["lists"]:
    noun = item["call"].removeprefix("POST /api/")
    key = {"abattoirs": "number", "recipes": "product"}.get(noun, "code")
    table = lists.setdefault(noun, {})
    want(item["body"][key] not in table, f"{noun}: {item['body'][key]} stands twice")
    table[item["body"][key]] = item["body"]
products, recipes, places = lists["products"], lists["recipes"], lists["places"]
for code, p in products.items():
    want(re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", code), f"product code {code}")
    want(set(p["names"]) == {"en", "fr"} and all(p["names"].values()), f"{code}: English and French name")
    want("gtin" not in p, f"{code}: no invented GTIN")
    if p.get("for_sale"): want(p.get("price_minor_per_kg"), f"{code} is for sale and has no price")
for code, r in recipes.items():
    for part in r["parts"]: want(part["product"] in products, f"recipe {code}: {part['product']} is no product")
def recipe_allergens(code, seen=()):
    """of the product and of all that its recipe names, nested"""
    want(code not in seen, f"recipe {code} contains itself")
    found = set(products[code]["allergens"])
    if code in seen: return found
    for part in recipes.get(code, {"parts": []})["parts"]: found |= recipe_allergens(part["product"], seen + (code,))
    return found

# ---- the book ----------------------------------------------------------------------------------------------
lots, stories, steps, cleaned = {}, set(), {}, []
def lot_of(ref, story_name, at):
    want(isinstance(ref, str) and ref.startswith("@"), f"{story_name}: {ref!r} is no reference")
    lot = lots.get(str(ref).lstrip("@"))
    want(lot is not None, f"{story_name}: {ref} is not made yet")
    if lot: want(lot.at <= at, f"{story_name}: {ref} is made later")
    return lot
def chosen(body, lot, story_name):
    """the packs a deed speaks of, by index"""
    asked = body.get("packs") or ([body["pack"]] if "pack" in body else None)
    if asked is None:
        asked = [n for n, p in enumerate(lot.packs, 1) if p.left > 0]
        want(len(asked) == 1, f"{story_name}: {lot.name} has {len(asked)} packs on hand, say which")
    want(len(set(asked)) == len(asked), f"{story_name}: a pack twice")
    want(all(1 <= n <= len(lot.packs) for n in asked), f"{story_name}: {lot.name} has no such pack in {asked}")
    return [n for n in asked if 1 <= n <= len(lot.packs)]
def draw(body, lot, story_name, column):
    """takes grams off packs; returns (milligrams, packs touched, packs)"""
    numbers, total = chosen(body, lot, story_name), 0
    want(not ("grams" in body and len(numbers) != 1), f"{story_name}: grams with several packs")
    for n in numbers:
        pack = lot.packs[n - 1]
        take = mg(body["grams"]) if "grams" in body else pack.left
        want(0 < take <= pack.left, f"{story_name}: {lot.name}/{n} has {pack.left} mg, asked {take}")
        want(pack.state != "frozen", f"{story_name}: {lot.name}/{n} is frozen")
        pack.left -= take
        total += take
    lot.sums[column] += total
    return total, numbers, [lot.packs[n - 1] for n in numbers]
def last_day(product, events):
    keep = products[product].get("keep")
    if not keep or keep["from"] not in events: return None
    return events[keep["from"]] + timedelta(days=keep["days"] - bool(keep["day_one_counts"]))
def birth(name, product, grams, at, body, use_by, place):
    want(name not in lots, f"lot name {name} used twice")
    want(product in products, f"{name}: {product} is no product")
    lot = Lot(name, product, mg(grams), at)
    state = body.get("state") or products[product]["storage"]
    if "pack_grams" in body:
        weights = [mg(g) for g in body["pack_grams"]]
        want(sum(weights) == lot.made, f"{name}: packs weigh {sum(weights)}, the lot {lot.made}")
    else:
        count = body.get("pack_count", 1)
        weights = [lot.made // count + (i < lot.made % count) for i in range(count)]
    want(place in places, f"{name}: no place {place}")
    for w in weights:
        pack = Pack(w, place, state, use_by)
        if state == "frozen": pack.days_left, pack.use_by = (use_by - at.date()).days if use_by else None, None
        lot.packs.append(pack)
    lots[name] = lot
    return lot

before, past_date, held, printed, voided, adopted, came_back = None, [], [], {}, [], [], []
for deed in story["deeds"]:
    name, call, b = deed["story"], deed["call"], deed["body"]
    want(name not in stories, f"story name {name} used twice"); stories.add(name)
    want("id" not in b, f"{name}: ids come from the loader")
    at = datetime.fromisoformat(b["at"])
    # New York: summer time from 2025-03-09 to 11-02 and from 2026-03-08 on
    summer = not (date(2025, 11, 2) <= at.date() < date(2026, 3, 8))
    same(f"{name}: offset", at.utcoffset(), timedelta(hours=-4 if summer else -5))
    want(at <= NOW, f"{name} is after {NOW}")
    if before:
        cleaning_together = call == before[2] == "POST /api/clean-downs" and b["place"] != before[3]
        want(before[1] < at or (before[1] == at and cleaning_together), f"{name} is not after {before[0]}")
    before = (name, at, call, b.get("place"))
    want(b["by"] in PEOPLE, f"{name}: who is {b['by']}?")
    if "place" in b: want(b["place"] in places, f"{name}: no place {b['place']}")
    day, makes = at.date(), deed.get("makes", [])

    if call == "POST /api/receipts":
        use_by, code = None, b["product"]
        want(("animal" in b) != ("bought" in b), f"{name}: an animal or bought in, one of them")
        if "bought" in b:
            want(b["bought"]["supplier"] in lists["suppliers"], f"{name}: supplier")
            if "use_by" in b["bought"]: use_by = date.fromisoformat(b["bought"]["use_by"])
        own = last_day(code, {"made": day, "received": day})
        if own and (not use_by or own < use_by): use_by = own
        same(f"{name}: makes", len(makes), 1); same(f"{name}: note", b["note"], makes[0])
        lot = birth(makes[0], code, b["grams"], at, b, use_by, b["place"])
        lot.allergens = recipe_allergens(code)
        if products[code]["species"]: lot.species = {products[code]["species"]}
        if "animal" in b:
            a = b["animal"]
            want(a["farm"] in lists["farms"] and a["abattoir"] in lists["abattoirs"], f"{name}: farm or abattoir")
            want(date.fromisoformat(a["killed_on"]) <= day, f"{name}: killed after it was received")
            same(f"{name}: species", a["species"], products[code]["species"])
            lot.animals = {(a["farm"], a["killed_on"], a.get("carcass") or a.get("tag") or name): Fraction(1)}
        else: lot.bought = b["bought"]

    elif call == "POST /api/steps":
        kind = b["kind"]
        want(kind in STEP_KINDS, f"{name}: no step {kind}")
        if "began_at" in b: want(datetime.fromisoformat(b["began_at"]) < at, f"{name}: began after its end")
        spots = {"break-down": {"bench"}, "cut": {"bench"}, "cure": {"cure-table"}, "grind": {"grinder"}, "smoke": {"smoker"}, "cook": {"stove"},
                 "render": {"stove"}, "mix": {"bench"}, "pack": {"slicer"}, "portion": {"bench", "slicer"}}
        want(b["place"] in spots.get(kind, places), f"{name}: {kind} at {b['place']}")
        taken, parents, caps, touched = 0, [], [], set()
        for i in b["inputs"]:
            lot = lot_of(i["lot"], name, at)
            if not lot: continue
            grams, numbers, packs = draw(i, lot, name, "used")
            for n in numbers:
                want((lot.name, n) not in touched, f"{name}: {lot.name}/{n} twice"); touched.add((lot.name, n))
            parents.append((lot, grams)); taken += grams
            for p in packs:
                if p.use_by: caps.append(p.use_by)
                if p.use_by and p.use_by < day: past_date.append(f"{name} uses {lot.name}, last day {p.use_by}")
        for a in b.get("added", []):
            want(a["what"] in ADDED, f"{name}: {a['what']} is edible, so it is an input lot"); taken += mg(a["grams"])
        given = sum(mg(o["grams"]) for o in b["outputs"])
        want(given <= taken, f"{name}: {given} mg out of {taken} mg")
        same(f"{name}: makes", makes, [o.get("note") for o in b["outputs"]])
        steps[name] = dict(kind=kind, at=at, place=b["place"], taken=taken, given=given, loss=taken - given, parents=[p.name for p, _ in parents], makes=makes)
        sourced = sum(g for p, g in parents if p.animals)
        shares = {}
        for p, g in parents:
            for animal, share in p.animals.items(): shares[animal] = shares.get(animal, 0) + share * Fraction(g, sourced)
        for o in b["outputs"]:
            code = o["product"]
            use_by = last_day(code, {"made": day, **({"packed": day} if kind == "pack" else {}), **({"cooked": day} if kind == "cook" else {})})
            if kind not in RESETS:
                use_by = min(caps + ([use_by] if use_by else [])) if caps or use_by else None
            lot = birth(o["note"], code, o["grams"], at, o, use_by, o.get("place", b["place"]))
            lot.parents, lot.step, lot.animals = [p for p, _ in parents], name, dict(shares)
            lot.allergens = recipe_allergens(code).union(*(p.allergens for p, _ in parents))
            lot.species = ({products[code]["species"]} - {None}).union(*(p.species for p, _ in parents))
            if shares: same(f"{name}: shares", sum(shares.values()), 1)

    elif call == "POST /api/moves":
        lot = lot_of(b["lot"], name, at)
        if "to" in b: want(b["to"] in places, f"{name}: no place {b['to']}")
        numbers = b.get("packs") or [n for n, p in enumerate(lot.packs, 1) if p.left > 0]
        want(numbers, f"{name}: nothing to move")
        for n in numbers:
            pack = lot.packs[n - 1]
            want(pack.left > 0, f"{name}: {lot.name}/{n} is empty")
            if "to" in b: pack.place = b["to"]
            if b.get("state") == "frozen":
                want(pack.state != "frozen", f"{name}: {lot.name}/{n} is frozen already")
                pack.days_left, pack.use_by = (pack.use_by - day).days if pack.use_by else None, None
            elif "state" in b and pack.state == "frozen":
                own = last_day(lot.product, {"thawed": day})              # the day of thawing is day 1 of what was left
                resumed = day + timedelta(days=max(pack.days_left - 1, 0)) if pack.days_left is not None else None
                pack.use_by = min((d for d in (own, resumed) if d), default=None)
            pack.state = b.get("state", pack.state)

    elif call == "POST /api/departures":
        lot = lot_of(b["lot"], name, at)
        column = {"sell": "sold", "serve": "served", "discard": "discarded"}[b["kind"]]
        late = [p for p in (lot.packs[n - 1] for n in chosen(b, lot, name)) if p.use_by and p.use_by < day]
        if late and column != "discarded": past_date.append(f"{name}, last day {late[0].use_by}")
        whole = "grams" not in b
        _, numbers, packs = draw(b, lot, name, column)
        lot.units[column] += len(numbers) if whole else 0
        if column == "sold":
            same(f"{name}: sold by", b["by"], "Tamsin Roke")
            want(all(p.place == "case" for p in packs), f"{name}: not in the counter case")
            want(products[lot.product].get("for_sale"), f"{name}: {lot.product} is not for sale")
            want(at.weekday() != 0 and 11 <= at.hour < 19, f"{name}: the counter is closed")
        if column == "discarded": want(b.get("why"), f"{name}: discarded, why?")

    elif call == "POST /api/readings":
        if "lot" in b:
            lot = lot_of(b["lot"], name, at)
            if "grams" in b:
                same(f"{name}: packs of a weighed lot", len(lot.packs), 1)
                pack, weight = lot.packs[0], mg(b["grams"])
                want(weight <= pack.left, f"{name}: heavier than before")
                lot.sums["lost"] += pack.left - weight
                pack.left = weight
    elif call == "POST /api/clean-downs":
        want(b["place"] in CONTACT, f"{name}: {b['place']} is no contact place"); cleaned.append((b["place"], at))
    elif call == "POST /api/releases":
        lot = lot_of(b["lot"], name, at)
        rule = products[lot.product].get("release")
        want(rule, f"{name}: {lot.product} has no rule of release")
        lost = Fraction(lot.made - lot.on_hand, lot.made) * 100
        if rule:
            least = Fraction(rule.get("loss_percent", 0)) - Fraction(rule.get("tolerance_points", 0))
            want(lost >= least, f"{name}: lost {float(lost):.1f} %, at least {float(least)}")
            want((at - lot.at).days >= rule.get("days", 0), f"{name}: {(at - lot.at).days} days, at least {rule.get('days')}")
    elif call == "POST /api/holds":
        for of in b["lots"]:
            lot = lot_of(of["lot"], name, at)
            want(lot and lot.on_hand > 0, f"{name}: nothing to hold"); held.append(lot.name)
        want(b.get("why"), f"{name}: held, why?")
    elif call == "POST /api/prints":
        want(b["printer"] in lists["printers"], f"{name}: no printer {b['printer']}")
        lot = lot_of(b["lot"], name, at)
        for n in chosen(b, lot, name): printed[lot.name, n] = lot.packs[n - 1].left
    elif call == "POST /api/take-backs":
        lot = lot_of(b["lot"], name, at)
        sold = next((d for d in story["deeds"] if d["body"].get("kind") == "sell" and d["body"]["lot"] == b["lot"] and b["pack"] in d["body"].get("packs", [])), None)
        want(sold and datetime.fromisoformat(sold["body"]["at"]) < at and lot.packs[b["pack"] - 1].left == 0, f"{name}: nobody has that pack")
        each = lot.made // len(lot.packs)
        lot.packs[b["pack"] - 1].left = each
        lot.back += each
        want(b.get("why"), f"{name}: back, why?"); came_back.append((lot.name, b["pack"]))
    elif call == "POST /api/adoptions":
        same(f"{name}: makes", len(makes), 1)
        lot = birth(makes[0], b["product"], b["grams"], at, b, None, b["place"])
        lot.allergens = recipe_allergens(b["product"])
        want(b.get("why"), f"{name}: found, how?"); adopted.append(makes[0])
    elif call == "POST /api/steps/{id}/void":
        of = deed["path"]["id"].removeprefix("@step:")
        want(b.get("why"), f"{name}: voided, why?")
        made = next((d["makes"] for d in story["deeds"] if d["story"] == of and d["body"]["at"] < b["at"]), None)
        want(made, f"{name}: {of} is not done yet")
        for gone in made or []:
            same(f"{name}: {gone} untouched", lots[gone].on_hand, lots[gone].made); voided.append(gone); del lots[gone]
    else: want(False, f"{name}: unknown call {call}")

for lot in lots.values():
    same(f"{lot.name}: made + back = used + sold + served + discarded + lost + on hand", lot.made + lot.back, sum(lot.sums.values()) + lot.on_hand)
for text in past_date: want(False, f"past its date: {text}")
for lot in lots.values():
    if lot.on_hand and lot.use_by and lot.name != "LIV-0624": want(lot.use_by >= NOW.date(), f"{lot.name} on hand, last day was {lot.use_by}")

# every contact place in use is cleaned the same evening at 22:00
for name, s in steps.items():
    if s["place"] in CONTACT and s["at"].date() < NOW.date():   # of today the evening is still to come
        want(any(p == s["place"] and t.date() == s["at"].date() and (t.hour, t.minute) == (22, 0) for p, t in cleaned), f"{name}: {s['place']} not cleaned that evening")
for place, t in cleaned:
    if t.date() in (date(2026, 6, 10), date(2026, 6, 11), date(2026, 6, 12)): same(f"clean-down {place} {t}", t.hour, 22)

# ---- the trace forward from S10 ----------------------------------------------------------------------------
def descendants(*roots):
    found, grew = [], True
    while grew:
        grew = False
        for lot in lots.values():
            if lot.name not in found and any(p.name in roots or p.name in found for p in lot.parents):
                found.append(lot.name); grew = True
    return found
S10 = ("BRC", "2026-06-08", "0608-17")
trace = descendants("S10")
def share(name, animal=S10): return round(float(lots[name].animals.get(animal, 0)) * 100, 1)

# lot: made, packs made, share %, sold kg, sold packs, plated kg, used in other lots, discarded kg, on hand kg, packs on hand
TABLE = """
L01     6.200 31 100   3.20 16  2.40 0     0.60  0      0
L03     0.420  1 100   0     0  0.42 0     0     0      0
L09    11.025  1 100   0     0  0    0     0     11.025 1
L13     6.000 24 100   2.00  8  1.00 0     0     3.000 12
L14     0.380  1 100   0     0  0.20 0     0     0.180  1
L17     0.742  1 100   0     0  0    0     0     0.742  1
L20     3.600 12 69.5  3.30 11  0    0     0.30  0      0
L21     2.700  1 69.5  0     0  2.70 0     0     0      0
L19     0.930  1 69.5  0     0  0    0     0.93  0      0
L22     1.740  1 100   0     0  1.74 0     0     0      0
L23     2.800  7 60.7  2.00  5  0    0     0     0.800  2
L24     4.000  8 51.7  0     0  1.00 1.00  0     2.000  4
L25     5.400 18 57.1  1.50  5  0    0.60  0     3.300 11
L26     0.900  9 57.1  0.30  3  0.30 0.30  0     0      0
L27     1.200  8 51.7  0.45  3  0.60 0     0.15  0      0
L28     4.300 20 6.7   0     0  1.72 0     0     2.580 12
L32     1.000  1 6.7   0     0  0    0     0     1.000  1
L30     3.350  1 8.9   0     0  2.85 0     0     0.500  1
L31     2.880 16 23.6  1.08  6  0    0     0     1.800 10
B10-12  0.315  1 100   0     0  0    0     0.315 0      0
"""
print(f"Forward trace from S10 at {NOW:%Y-%m-%d %H:%M}\n")
print(f"{'Lot':7}{'Product':42}{'Made kg':>13}{'S10 %':>7}{'Sold':>12}{'Plated':>8}{'Used':>7}{'Discard':>9}{'On hand':>13}  Use by")
rows = [r.split() for r in TABLE.strip().splitlines()]
for r in rows:
    lot = lots[r[0]]; s = lot.sums
    u = lambda n: f" ({n})" if n else ""
    print(f"{lot.name:7}{products[lot.product]['names']['en'][:41]:42}{kg(lot.made) + f' ({len(lot.packs)})':>13}{share(lot.name):>7}{kg(s['sold']) + u(lot.units['sold']):>12}"
          f"{kg(s['served']):>8}{kg(s['used']):>7}{kg(s['discarded']):>9}{kg(lot.on_hand) + u(lot.packs_on_hand):>13}  {lot.use_by or '-'}")
    k = lambda text: int(Decimal(text) * 1000000)
    got = (lot.made, len(lot.packs), share(lot.name), s["sold"], lot.units["sold"], s["served"], s["used"], s["discarded"], lot.on_hand, lot.packs_on_hand)
    same(f"table {lot.name}", got, (k(r[1]), int(r[2]), float(r[3]), k(r[4]), int(r[5]), k(r[6]), k(r[7]), k(r[8]), k(r[9]), int(r[10])))
    same(f"{lot.name}: lost", s["lost"], 0)
total = lambda column: sum(lots[n].sums[column] for n in trace)
units, hand = sum(lots[n].units["sold"] for n in trace), sum(lots[n].on_hand for n in trace)
print(f"\nDescendants {len(trace)}, with stock {sum(lots[n].on_hand > 0 for n in trace)}, on hand {kg(hand)} kg; "
      f"sold {kg(total('sold'))} kg ({units}), plated {kg(total('served'))}, discarded {kg(total('discarded'))}")
same("descendants", len(trace), 36)
same("descendants with stock", [n for n in sorted(trace) if lots[n].on_hand], sorted("L09 L13 L14 L17 L23 L24 L25 L28 L32 L30 L31".split()))
same("used up", sorted(set(trace) - {r[0] for r in rows}), sorted([f"B10-{n:02d}" for n in range(1, 12)] + ["L02", "L04", "L11", "L12", "L18"]))
for n in set(trace) - {r[0] for r in rows}: same(f"{n}: all used", lots[n].sums["used"], lots[n].made)
same("on hand", hand, 26_927_000); same("sold units", units, 57)
same("sold", total("sold"), 13_830_000); same("plated", total("served"), 14_930_000); same("discarded", total("discarded"), 2_295_000)
same("every descendant has a share of S10", sorted(n for n, l in lots.items() if S10 in l.animals), sorted(trace + ["S10"]))
sales = [datetime.fromisoformat(d["body"]["at"]).date() for d in story["deeds"] if d["body"].get("kind") == "sell" and d["body"]["lot"][1:] in trace]
same("sold from and to", (min(sales), max(sales)), (date(2026, 6, 12), date(2026, 6, 25)))
at_1040 = {p.state for p in lots["L23"].packs if p.left} | {p.state for p in lots["L24"].packs if p.left}
same("L23 and L24 on hand are frozen", at_1040, {"frozen"})

# ---- backward, and what stays clear ------------------------------------------------------------------------
def origins(name):
    animals = lots[name].animals
    return {n for n, l in lots.items() if not l.parents and l.animals and set(l.animals) & set(animals)}
for name, expected in {"L28": "S09 S10 S13", "L32": "S09 S10 S13", "L30": "S10 S11 S12", "L31": "S09 S10 S11", "L20": "S10 S11", "L23": "S10 S11", "L25": "S09 S10",
                       "L13": "S10", "L16": "S11", "L29": "S13", "H-01": "S01L S01R", "H-06": "S07", "G-03": "S04", "P-01": "S01L S01R", "C-02": "S02", "D-01": "S05"}.items():
    same(f"origins of {name}", origins(name), set(expected.split()))
# H-01: 7.710 at the last weighing, less 0.600 sliced on 06-23
for name, grams in {"H-01": 7110, "H-02": 7550, "H-03": 7460, "H-04": 6920, "H-05": 8150, "H-06": 9950, "L10": 10290, "L16": 5990, "B11-04": 1344, "B11-07": 672, "B11-09": 5166,
                    "L29": 6691, "B12-01": 6720, "B12-02": 2730, "B12-03": 2310, "C-02": 1240, "P-01": 5180, "G-03": 560, "D-01": 5510}.items():
    want(name not in trace, f"{name} must stay clear")
    same(f"{name} on hand", lots[name].on_hand, grams * 1000)
for name, made in {"H-01": 11320, "H-02": 11220, "H-03": 10340, "H-04": 10240, "H-05": 10658, "H-06": 10820, "C-02": 1850, "P-01": 6900, "G-03": 696, "D-01": 7814}.items():
    same(f"{name} green weight", lots[name].made, made * 1000)
only_s11 = [n for n in descendants("S11") if n not in trace and lots[n].on_hand]
same("S11's own lots, wrongly held if the kill date were the scope", sum(lots[n].on_hand for n in only_s11), 23_462_000)
same("S11's chops", (lots["L05"].sums["sold"], lots["L05"].units["sold"], lots["L05"].sums["served"], lots["L05"].on_hand), (3_400_000, 17, 2_400_000, 0))
for name in ("L06", "L07"): same(f"{name} plated", lots[name].sums["served"], lots[name].made)
weighings = {}
for d in story["deeds"]:
    if d["call"] == "POST /api/readings" and "grams" in d["body"]: weighings.setdefault(d["body"]["lot"][1:], []).append(mg(d["body"]["grams"]))
for name, last in {"H-01": 7710, "H-02": 7550, "H-03": 7460, "H-04": 6920, "H-05": 8150, "H-06": 9950, "C-02": 1240, "P-01": 5180, "G-03": 560, "D-01": 5510}.items():
    same(f"{name}: last weighing", weighings[name][-1], last * 1000)
same("nobody weighed H-07 or H-08", {"L09", "L10"} & set(weighings), set())
same("water activity readings", {d["body"]["lot"] for d in story["deeds"] if d["body"].get("water_activity") == Decimal("0.86")}, {"@H-01", "@H-02", "@C-02", "@P-01"})

# ---- losses and yields of the flow, in grams ---------------------------------------------------------------
for name, loss in {"BRK-S01": 920, "BRK-S02": 840, "BRK-S04": 436, "BRK-S07": 880, "BRK-S09": 860, "BRK-S10": 450, "BRK-S11": 420, "BRK-S12": 0, "BRK-S13": 0, "BRK-S05": 1954, "BRK-S15": 0, "E01": 195, "E02": 170, "E03": 1200, "E04": 1100, "E05": 0, "E06": 799,
                   "E07": 40, "E08": 0, "E09": 747, "E10": 0, "E11": 4350, "E12": 30, "E13": 530, "E14": 59, "E15": 5125, "E16": 709, "E17": 869, "E18a": 0, "E18": 748, "E19": 0, "E20": 3630, "E21": 2285}.items():
    same(f"{name}: loss", steps[name]["loss"], loss * 1000)
same("E11 began", next(d["body"]["began_at"] for d in story["deeds"] if d["story"] == "E11"), "2026-06-12T18:00:00-04:00")
for story_day, names in {"06-10": "BRK-S10 BRK-S11", "06-11": "E01 E02 E03 E04 E05 E08 E10", "06-12": "E14 E15", "06-13": "E11 E12 E13", "06-16": "BRK-S13 E17", "06-17": "E16 E18a E19",
                         "06-18": "BRK-S12", "06-20": "E20 E21", "06-21": "E18", "06-22": "E06 E09", "06-24": "E07"}.items():
    for name in names.split(): same(f"{name}: day", f"{steps[name]['at']:%m-%d}", story_day)

# ---- dates and allergens -----------------------------------------------------------------------------------
for name, day in {"L30": "06-26", "L31": "06-26", "L28": "06-27", "L13": "06-30", "L14": "06-30", "L16": "07-05", "L25": "09-14", "D4-CHOPS": "06-26", "D2-TUBS": "06-29"}.items():
    lot = lots[name]
    got = lot.use_by or min((p.use_by for p in lot.packs if p.use_by), default=None)
    same(f"{name}: use by", str(got), f"2026-{day}")
for name, day in {"L20": "06-19", "L21": "06-19", "L22": "06-16", "L27": "06-22", "L26": "06-21", "L12": "07-05"}.items():
    same(f"{name}: use by", str(lots[name].packs[0].use_by), f"2026-{day}")
for name in ("L09", "L10", "L17", "L29", "SAU-0611", "H-02", "S10"): same(f"{name}: no date", lots[name].use_by, None)
want("keep" not in products["mustard-vinegar-sauce"], "the acid sauce has no rule")
for name, keys in {"L20": "anchovy barley mustard", "L22": "sesame soy wheat", "S09-RIBS": "sesame soy", "L23": "sulphites", "L24": "celery", "L27": "celery mustard", "L30": "celery sulphites", "L31": "", "L28": "", "L13": "",
                   "S07-TERR": "egg milk pistachio wheat", "S03-CURRY": "cashew celery milk mustard", "S15-ROCH": "milk", "S15-PARF": "egg milk sulphites", "B01-PAST": "mustard", "S08-MERG": ""}.items():
    same(f"{name}: allergens", sorted(lots[name].allergens), keys.split())
same("species in the confit", lots["L28"].species, {"duck", "pig"}); same("species in the lamb", lots["L30"].species, {"sheep", "pig"})

# ---- one lot for each kind of stop, none of them of S10 ----------------------------------------------------
same("past its day", (str(lots["LIV-0624"].use_by), lots["LIV-0624"].on_hand), ("2026-06-25", 2_400_000))
same("held", held, ["B04"])
same("too warm at the door", [d["story"] for d in story["deeds"] if d["body"].get("as_it_happened")], ["B03"])
same("labels that say more than there is", [of for of, left in printed.items() if lots[of[0]].packs[of[1] - 1].left < left], [("S15-PARF", 9)])
want("declares" not in next(d["body"]["bought"] for d in story["deeds"] if d["story"] == "SCH-0626"), "nothing says that the bought ham is ready")
same("waste on hand", [(n, l.on_hand) for n, l in lots.items() if products[l.product]["kind"] == "waste" and l.on_hand], [("SCR-0626", 120_000)])
same("came back", came_back, [("H-01-SLICED", 2)]); same("its history is unknown", adopted, ["POT-0626"]); same("voided", voided, ["BEL-TWICE"])
for n in ("LIV-0624", "B03", "B04", "SCH-0626", "S15-PARF", "SCR-0626", "H-01-SLICED", "POT-0626"): want(n not in trace, f"{n} must stay clear")

# ---- everyday scenes ---------------------------------------------------------------------------------------
same("D1 end", (steps["D1"]["at"].isoformat(), steps["D1"]["place"]), ("2026-06-23T05:30:00-04:00", "smoker"))
same("D2: six packs", len(lots["D2-TUBS"].packs), 6)
same("D9 G1 from", steps["D9-G1"]["parents"], ["B02"]); same("D9 G2 from", steps["D9-G2"]["parents"], ["B02", "G1-HEAD"]); same("D9 G3 from", steps["D9-G3"]["parents"], ["B02"])
want(steps["D9-G1"]["makes"] == ["G1", "G1-HEAD"] and steps["D9-G2"]["makes"] == ["G2", "G2-HEAD"], "D9: each grind leaves its carry-over")
same("patties", [(lots[n].made, len(lots[n].packs)) for n in ("G1", "G2")], [(4_950_000, 33), (3_000_000, 20)])
want(("grinder", datetime.fromisoformat("2026-06-24T10:15:00-04:00")) in cleaned, "D9: grinder cleaned at 10:15")
for n in ("D1-PULL", "D2-TUBS", "D4-CHOPS", "G1", "G2", "G3"): want(n not in trace, f"{n} must stay clear")

if "--stock" in sys.argv:
    print("\nOn hand at the end")
    for lot in lots.values():
        if lot.on_hand:
            spots = sorted({f"{p.place} {p.state}" for p in lot.packs if p.left})
            print(f"  {lot.name:12}{products[lot.product]['names']['en'][:40]:42}{kg(lot.on_hand):>9} kg ({lot.packs_on_hand})  {', '.join(spots):32} {lot.use_by or ''}")

print(f"\n{len(story['lists'])} list entries ({len(products)} products, {len(recipes)} recipes), {len(story['deeds'])} deeds, {len(lots)} lots, {len(steps)} steps")
for text in failures: print("WRONG", text)
print("All figures agree." if not failures else f"{len(failures)} wrong.")
sys.exit(bool(failures))
