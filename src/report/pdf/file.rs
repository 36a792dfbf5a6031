//! The file around the pages: catalog, fonts, structure, properties.

use pdf_writer::types::{CidFontType, FontFlags, SystemInfo, UnicodeCmap};
use pdf_writer::{Date, Filter, Finish, Name, Pdf, Rect, Ref, Str, TextStr};
use std::collections::BTreeMap;

use super::DocDate;
use super::Fonts;
use super::face::{ABSENT, Faces, Weight};
use super::lines::fitted;
use super::pages::{Page, Placed};
use super::paint::{FONT, image_name};
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
    // XML 1.0 has no place for most control characters, however written.
    let title: String = title.chars().filter(|c| !c.is_control()).collect();
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
    let mut pdf = Pdf::new();
    pdf.set_version(1, 7);
    let mut alloc = Ref::new(1);
    let catalog = alloc.bump();
    let info = alloc.bump();
    let tree = alloc.bump();
    let struct_root = alloc.bump();
    let page_refs: Vec<Ref> = streams.iter().map(|_| alloc.bump()).collect();

    let embedded = embed(&mut pdf, &mut alloc, faces, fonts.regular);

    let photos: Vec<Ref> = images.iter().map(|_| alloc.bump()).collect();
    for (image, id) in images.iter().zip(&photos) {
        let mut object = pdf.image_xobject(*id, image.bytes);
        object.filter(Filter::DctDecode);
        object.width(image.width.into());
        object.height(image.height.into());
        object.bits_per_component(8);
        match image.grey {
            true => object.color_space().device_gray(),
            false => object.color_space().device_rgb(),
        }
    }
    let described = alloc.bump();
    pdf.stream(described, metadata(&doc.title).as_bytes())
        .pair(Name(b"Type"), Name(b"Metadata"))
        .pair(Name(b"Subtype"), Name(b"XML"));

    pdf.pages(tree)
        .kids(page_refs.iter().copied())
        .count(page_refs.len() as i32);
    for (i, stream) in streams.iter().enumerate() {
        let id = alloc.bump();
        pdf.stream(id, stream);
        let mut page = pdf.page(page_refs[i]);
        page.parent(tree);
        page.media_box(Rect::new(0.0, 0.0, frame.page_width, frame.page_height));
        page.contents(id);
        page.struct_parents(i as i32);
        page.pair(Name(b"Tabs"), Name(b"S"));
        let mut resources = page.resources();
        let mut dict = resources.fonts();
        dict.pair(FONT, embedded);
        dict.finish();
        if !photos.is_empty() {
            let mut dict = resources.x_objects();
            for (n, photo) in photos.iter().enumerate() {
                dict.pair(Name(&image_name(n)), *photo);
            }
        }
    }

    let (document, arrays) = tags.write(&mut pdf, &mut alloc, struct_root, &page_refs);
    let mut root = pdf
        .indirect(struct_root)
        .start::<pdf_writer::writers::StructTreeRoot<'_>>();
    root.child(document);
    let mut parents = root.parent_tree();
    let mut nums = parents.nums();
    for (i, array) in arrays.iter().enumerate() {
        nums.insert(i as i32, *array);
    }
    nums.finish();
    parents.finish();
    root.parent_tree_next_key(arrays.len() as i32);
    root.finish();

    let language = if doc.language.is_empty() {
        "en"
    } else {
        &doc.language
    };
    let mut cat = pdf.catalog(catalog);
    cat.pages(tree);
    cat.lang(TextStr(language));
    cat.metadata(described);
    cat.mark_info().marked(true);
    cat.viewer_preferences().display_doc_title(true);
    cat.pair(Name(b"StructTreeRoot"), struct_root);
    cat.finish();

    let mut dict = pdf.document_info(info);
    dict.title(TextStr(&doc.title));
    if !doc.subject.is_empty() {
        dict.subject(TextStr(&doc.subject));
    }
    if !doc.author.is_empty() {
        dict.author(TextStr(&doc.author));
    }
    dict.producer(TextStr(concat!("Coldsump ", env!("CARGO_PKG_VERSION"))));
    dict.creation_date(date(created));
    dict.finish();
    pdf.finish()
}

fn date(d: DocDate) -> Date {
    let minutes = d.offset_minutes;
    Date::new(d.year)
        .month(d.month)
        .day(d.day)
        .hour(d.hour)
        .minute(d.minute)
        .second(d.second)
        .utc_offset_hour((minutes / 60) as i8)
        .utc_offset_minute((minutes.unsigned_abs() % 60) as u8)
}

/// Embeds a font whole: it is already a subset. Returns the font's reference.
fn embed(pdf: &mut Pdf, alloc: &mut Ref, faces: &Faces<'_>, data: &[u8]) -> Ref {
    let (font, cid, descriptor, cmap, file) = (
        alloc.bump(),
        alloc.bump(),
        alloc.bump(),
        alloc.bump(),
        alloc.bump(),
    );
    let face = faces.face();
    let name = Name(b"ColdsumpReport-Regular");
    let system = SystemInfo {
        registry: Str(b"Adobe"),
        ordering: Str(b"Identity"),
        supplement: 0,
    };
    let scale = |units: i16| f32::from(units) * 1000.0 / f32::from(face.units_per_em().max(1));

    pdf.type0_font(font)
        .base_font(name)
        .encoding_predefined(Name(b"Identity-H"))
        .descendant_font(cid)
        .to_unicode(cmap);
    let mut cid_font = pdf.cid_font(cid);
    cid_font.subtype(CidFontType::Type2);
    cid_font.base_font(name);
    cid_font.system_info(system);
    cid_font.font_descriptor(descriptor);
    cid_font.default_width(0.0);
    cid_font.cid_to_gid_map_predefined(Name(b"Identity"));
    let count = face.number_of_glyphs();
    cid_font
        .widths()
        .consecutive(0, (0..count).map(|g| (faces.advance(g) * 1000.0).round()));
    cid_font.finish();

    let bbox = face.global_bounding_box();
    pdf.font_descriptor(descriptor)
        .name(name)
        .flags(FontFlags::NON_SYMBOLIC)
        .bbox(Rect::new(
            scale(bbox.x_min),
            scale(bbox.y_min),
            scale(bbox.x_max),
            scale(bbox.y_max),
        ))
        .italic_angle(0.0)
        .ascent(scale(face.ascender()))
        .descent(scale(face.descender()))
        .cap_height(scale(face.capital_height().unwrap_or(face.ascender())))
        .stem_v(85.0)
        .font_file2(file);

    let mut map = UnicodeCmap::<u16>::new(Name(b"ColdsumpUnicode"), system);
    for (glyph, ch) in characters(faces) {
        map.pair(glyph, ch);
    }
    pdf.stream(cmap, &map.finish());

    pdf.stream(file, data)
        .pair(Name(b"Length1"), data.len() as i32);
    font
}

/// The character each glyph stands for: the lowest, where several share one.
fn characters(faces: &Faces<'_>) -> BTreeMap<u16, char> {
    let mut map = BTreeMap::new();
    let cmap = faces.face().tables().cmap;
    let tables = cmap.into_iter().flat_map(|cmap| cmap.subtables);
    for table in tables.filter(|t| t.is_unicode()) {
        table.codepoints(|code| {
            if let (Some(ch), Some(glyph)) = (char::from_u32(code), table.glyph_index(code)) {
                let kept = map.entry(glyph.0).or_insert(ch);
                *kept = (*kept).min(ch);
            }
        });
    }
    map.insert(ABSENT, char::REPLACEMENT_CHARACTER);
    map
}
