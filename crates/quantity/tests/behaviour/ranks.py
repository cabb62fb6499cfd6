"""Ranks of a variate, by a second implementation: FNV-1a 64, splitmix64, Fisher-Yates from the last place down.

Run `python3 ranks.py`; it prints the rows that stand in variate.rs. The two building blocks are first held against
published values: FNV-1a test vectors (Fowler, Noll, Vo: IETF draft "The FNV Non-Cryptographic Hash Algorithm", appendix)
and the first numbers of splitmix64 from seed 1234567 (Vigna's splitmix64.c as listed on Rosetta Code, from memory).
"""

MASK = (1 << 64) - 1


def fnv1a(data):
    value = 0xCBF29CE484222325
    for byte in data:
        value = ((value ^ byte) * 0x100000001B3) & MASK
    return value


def splitmix(seed):
    state = seed
    while True:
        state = (state + 0x9E3779B97F4A7C15) & MASK
        z = state
        z = ((z ^ (z >> 30)) * 0xBF58476D1CE4E5B9) & MASK
        z = ((z ^ (z >> 27)) * 0x94D049BB133111EB) & MASK
        yield z ^ (z >> 31)


def ranks(name, points=512):
    draw = splitmix(fnv1a(name.encode()))
    order = list(range(points))
    for last in range(points - 1, 0, -1):
        pick = next(draw) * (last + 1) >> 64
        order[last], order[pick] = order[pick], order[last]
    return order


assert fnv1a(b"") == 0xCBF29CE484222325
assert fnv1a(b"a") == 0xAF63DC4C8601EC8C
assert fnv1a(b"foobar") == 0x85944171F73967E8
numbers = splitmix(1234567)
assert [next(numbers) for _ in range(3)] == [
    6457827717110365317,
    3203168211198807973,
    9817491932198370423,
]

if __name__ == "__main__":
    for name in ["pieces/p1/extent", "baths/b1/efficiency", ""]:
        print(f'    ("{name}", {ranks(name)[:8]}),')
