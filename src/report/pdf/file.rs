//! The file around the pages: catalog, fonts, structure, properties.

use super::DocDate;
use super::Fonts;
use super::face::{Faces, Weight};
use super::lines::fitted;
use super::out::{Out, array, text};
use super::pages::{Page, Placed};
use super::pictures::Jpeg;
use super::strip::Strip;
use super::style::{Frame, QUIET, SMALL};
use super::tags::Tags;
use crate::report::doc::{Doc, Footer};

/// "Title · page 1 of 2" at the foot of every page, as decoration.
pub(super) fn add_footers(pages: &mut [Page], footer: &Footer, faces: &Faces<'_>, frame: &Frame) {
    let total = pages.len();
    for (i, page) in pages.iter_mut().enumerate() {
        let count = format!("{} {} {} {total}", footer.page, i + 1, footer.of);
        let count = fitted(faces, count.trim(), Weight::Regular, SMALL, frame.width());
        let title = match footer.title.as_str() {
            "" => String::new(),
            title => format!("{title} · "),
        };
        let room = frame.width() - count.width;
        // A title that is cut keeps the dot between it and the number.
        let mut title_line = fitted(faces, &title, Weight::Regular, SMALL, room);
        if !title.is_empty() {
            let dot = super::lines::single(faces, " ·", Weight::Regular, SMALL);
            title_line = fitted(
                faces,
                &footer.title,
                Weight::Regular,
                SMALL,
                room - dot.width - 3.0,
            );
            title_line.width += dot.width + 3.0;
            title_line.parts.extend(dot.parts);
        }
        let mut strip = Strip::blank(SMALL);
        strip.hairline(frame.hang, frame.right, -14.0);
        strip.line(None, &title_line, frame.left, 0.0, SMALL, QUIET);
        strip.line(
            None,
            &count,
            frame.left + title_line.width,
            0.0,
            SMALL,
            QUIET,
        );
        page.push(Placed {
            y: frame.page_height - 36.0,
            strip,
        });
    }
}

/// What a reader for PDF/UA looks for (ISO 14289-1, 5): that the file says it
/// is one, and its title, in XMP (ISO 16684-1).
fn metadata(title: &str) -> String {
    let title = title.replace('&', "&amp;").replace('<', "&lt;");
    let title = title.replace('>', "&gt;"); // for "]]>", which no text may hold
    // XML 1.0 has no place for most control characters, however written, nor for
    // the two that are no characters.
    let sound = |c: &char| !c.is_control() && !matches!(c, '\u{fffe}' | '\u{ffff}');
    let title: String = title.chars().filter(sound).collect();
    format!(
        "<?xpacket begin=\"\u{feff}\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\
         <x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\
         <rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\
         <rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\" \
         xmlns:pdfuaid=\"http://www.aiim.org/pdfua/ns/id/\" pdfuaid:part=\"1\">\
         <dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">{title}</rdf:li></rdf:Alt></dc:title>\
         </rdf:Description></rdf:RDF></x:xmpmeta><?xpacket end=\"r\"?>"
    )
}

/// The file. Object numbers are given out in a fixed order, so equal input
/// gives equal bytes.
#[allow(clippy::too_many_arguments)]
pub(super) fn write(
    doc: &Doc,
    fonts: Fonts<'_>,
    faces: &Faces<'_>,
    frame: &Frame,
    tags: &Tags,
    streams: &[Vec<u8>],
    images: &[Jpeg<'_>],
    created: DocDate,
) -> Vec<u8> {
    let mut out = Out::new();
    let [catalog, info, tree, struct_root, described] = [(); 5].map(|()| out.name());
    let pages: Vec<usize> = streams.iter().map(|_| out.name()).collect();
    let font = embed(&mut out, faces, fonts.regular);
    let mut photos = String::new();
    for (n, image) in images.iter().enumerate() {
        let id = out.name();
        let (width, height) = (image.width, image.height);
        let space = if image.grey { "Gray" } else { "RGB" };
        out.stream(
            id,
            &format!(
                "/Type/XObject/Subtype/Image/Width {width}/Height {height}\
                 /ColorSpace/Device{space}/BitsPerComponent 8/Filter/DCTDecode"
            ),
            image.bytes,
        );
        photos += &format!("/I{n} {id} 0 R");
    }
    let xmp = metadata(&doc.title);
    out.stream(described, "/Type/Metadata/Subtype/XML", xmp.as_bytes());

    let sheet = array(&[0.0, 0.0, frame.page_width, frame.page_height]);
    let mut kids = String::new();
    for (i, stream) in streams.iter().enumerate() {
        let id = out.name();
        out.stream(id, "", stream);
        out.object(
            pages[i],
            &format!(
                "<</Type/Page/Parent {tree} 0 R/MediaBox{sheet}/Contents {id} 0 R\
                 /StructParents {i}/Tabs/S\
                 /Resources<</Font<</F0 {font} 0 R>>/XObject<<{photos}>>>>>>"
            ),
        );
        kids += &format!("{} 0 R ", pages[i]);
    }
    let count = pages.len();
    out.object(tree, &format!("<</Type/Pages/Kids[{kids}]/Count {count}>>"));
    tags.write(&mut out, struct_root, &pages);

    let language = match doc.language.as_str() {
        "" => "en",
        language => language,
    };
    let language = text(language);
    out.object(
        catalog,
        &format!(
            "<</Type/Catalog/Pages {tree} 0 R/Lang{language}/MarkInfo<</Marked true>>\
             /ViewerPreferences<</DisplayDocTitle true>>/StructTreeRoot {struct_root} 0 R\
             /Metadata {described} 0 R>>"
        ),
    );
    let mut properties = "<<".to_owned();
    for (key, said) in [
        ("Title", doc.title.as_str()),
        ("Subject", &doc.subject),
        ("Author", &doc.author),
        ("Producer", concat!("Coldsump ", env!("CARGO_PKG_VERSION"))),
    ] {
        if !said.is_empty() {
            properties += &format!("/{key}{}", text(said));
        }
    }
    properties += &date(created);
    out.object(info, &properties);
    out.finish(catalog, info)
}

/// The date of making (7.9.4), and the end of the properties.
fn date(d: DocDate) -> String {
    let sign = if d.offset_minutes < 0 { '-' } else { '+' };
    let ahead = d.offset_minutes.unsigned_abs();
    format!(
        "/CreationDate(D:{:04}{:02}{:02}{:02}{:02}{:02}{sign}{:02}'{:02}')>>",
        d.year,
        d.month,
        d.day,
        d.hour,
        d.minute,
        d.second,
        ahead / 60,
        ahead % 60
    )
}

/// Embeds a font whole: it is already a subset. Returns its number.
fn embed(out: &mut Out, faces: &Faces<'_>, data: &[u8]) -> usize {
    const NAME: &str = "ColdsumpReport-Regular";
    const SYSTEM: &str = "/CIDSystemInfo<</Registry(Adobe)/Ordering(Identity)/Supplement 0>>";
    let [font, cid, descriptor, cmap, file] = [(); 5].map(|()| out.name());
    out.object(
        font,
        &format!(
            "<</Type/Font/Subtype/Type0/BaseFont/{NAME}/Encoding/Identity-H\
             /DescendantFonts[{cid} 0 R]/ToUnicode {cmap} 0 R>>"
        ),
    );
    let widths = (0..faces.glyphs).map(|g| (faces.advance(g) * 1000.0).round());
    let widths = array(&widths.collect::<Vec<_>>());
    out.object(
        cid,
        &format!(
            "<</Type/Font/Subtype/CIDFontType2/BaseFont/{NAME}{SYSTEM}\
             /FontDescriptor {descriptor} 0 R/DW 0/CIDToGIDMap/Identity/W[0{widths}]>>"
        ),
    );
    let [left, foot, right, top, ascent, descent, capital] = faces.extent;
    let extent = array(&[left, foot, right, top]);
    // Flag 32: letters of the Latin alphabet. The stem is a guess.
    out.object(
        descriptor,
        &format!(
            "<</Type/FontDescriptor/FontName/{NAME}/Flags 32/FontBBox{extent}/ItalicAngle 0\
             /Ascent {ascent:.0}/Descent {descent:.0}/CapHeight {capital:.0}/StemV 85\
             /FontFile2 {file} 0 R>>"
        ),
    );
    out.stream(cmap, "", unicode(faces).as_bytes());
    out.stream(file, &format!("/Length1 {}", data.len()), data);
    font
}

/// The map from glyphs back to characters (9.10.3).
fn unicode(faces: &Faces<'_>) -> String {
    let mut map = "/CIDInit/ProcSet findresource begin 12 dict begin begincmap\n\
                   /CIDSystemInfo<</Registry(Adobe)/Ordering(UCS)/Supplement 0>>def\n\
                   /CMapName/ColdsumpUnicode def/CMapType 2 def\n\
                   1 begincodespacerange<0000><FFFF>endcodespacerange\n"
        .to_owned();
    let characters = faces.characters();
    let known = |(glyph, ch): (usize, &Option<char>)| Some((glyph, u32::from((*ch)?)));
    let pairs: Vec<(usize, u32)> = characters.iter().enumerate().filter_map(known).collect();
    // At most a hundred in one go.
    for part in pairs.chunks(100) {
        map += &format!("{} beginbfchar\n", part.len());
        for (glyph, ch) in part {
            map += &format!("<{glyph:04X}><{ch:04X}>\n");
        }
        map += "endbfchar\n";
    }
    map + "endcmap CMapName currentdict/CMap defineresource pop end end"
}
