#!/bin/sh
# Rebuilds the font of the PDF report, public/fonts/report-regular.ttf,
# from Inter 4.1 as published in the npm package inter-ui 4.1.1 (SIL Open Font
# License 1.1, no Reserved Font Name; licence text in public/fonts/OFL.txt).
#
# Keeps Latin-1, Latin Extended-A, punctuation and the trade's symbols; drops
# hinting and layout tables; makes the tabular figures the default ones.
#
# Needs: npm, python3 with venv, brotli (for the sizes). Usage: tools/fonts.sh
set -eu
root=$(cd "$(dirname "$0")/.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

cd "$work"
npm pack --silent inter-ui@4.1.1 >/dev/null
tar xzf inter-ui-4.1.1.tgz
python3 -m venv venv
venv/bin/pip install --quiet fonttools==4.63.0 brotli==1.2.0

cat > subset.py <<'PY'
import sys
from fontTools import subset
from fontTools.ttLib import TTFont

source, target, weight = sys.argv[1:]

wanted = set(range(0x20, 0x7F)) | set(range(0xA0, 0x180))
wanted |= {ord(c) for c in "‐‑‒–—‘’‚“”„†•…‰′″‹›€™"}
wanted |= {ord(c) for c in "µμΩΩΔ∆≤≥≈≠×÷−±√∞½¼¾⅓⅔⅛⅜⅝⅞→←↑↓↗↘•·²³₂✓✗"}
wanted |= {0x2002, 0x2003, 0x2007, 0x2009, 0x202F, 0xFFFD}

font = TTFont(source)
cmap = font.getBestCmap()

# Tabular figures become the default figures.
for lookup in (
    font["GSUB"].table.LookupList.Lookup[i]
    for record in font["GSUB"].table.FeatureList.FeatureRecord
    if record.FeatureTag == "tnum"
    for i in record.Feature.LookupListIndex
):
    for table in lookup.SubTable:
        table = getattr(table, "ExtSubTable", table)
        for code in range(ord("0"), ord("9") + 1):
            tabular = table.mapping.get(cmap[code])
            if tabular:
                for sub in font["cmap"].tables:
                    if sub.isUnicode():
                        sub.cmap[code] = tabular

widths = {font["hmtx"][font.getBestCmap()[c]][0] for c in range(0x30, 0x3A)}
assert len(widths) == 1, f"figures are not tabular: {widths}"

options = subset.Options()
options.hinting = False
options.layout_features = []
options.drop_tables += ["GSUB", "GPOS", "GDEF", "DSIG", "STAT", "MVAR", "meta", "gasp"]
options.name_IDs = [0, 1, 2, 3, 4, 5, 6, 13, 14]
options.name_languages = [0x409]
options.glyph_names = False
options.notdef_outline = True
options.recalc_timestamp = False
sub = subset.Subsetter(options)
sub.populate(unicodes=sorted(wanted))
sub.subset(font)

family = "Coldsump Report"
names = {1: family, 2: weight, 3: f"{family} {weight}; from Inter 4.1",
         4: f"{family} {weight}", 6: f"ColdsumpReport-{weight}"}
for record in list(font["name"].names):
    if record.nameID in names:
        record.string = names[record.nameID]
font.flavor = None
font["head"].modified = font["head"].created
font.recalcTimestamp = False
font.save(target)

have = font.getBestCmap()
print(target, len(font.getGlyphOrder()), "glyphs; absent:",
      " ".join(f"U+{c:04X}" for c in sorted(wanted - set(have))) or "none")
PY

mkdir -p "$root/public/fonts"
file=$root/public/fonts/report-regular.ttf
venv/bin/python subset.py package/web/Inter-Regular.woff2 "$file" Regular
echo "$(wc -c <"$file") bytes, $(brotli -q 11 -c "$file" | wc -c) after brotli"
cp package/LICENSE.txt "$root/public/fonts/OFL.txt"
