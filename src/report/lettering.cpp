// SPDX-License-Identifier: MIT
#include "report/lettering.hpp"

#include <array>
#include <fontconfig/fontconfig.h>
#include <pango/pangocairo.h>
#include <pango/pangofc-fontmap.h>

namespace rakeline::report {
namespace {

struct FontFile {
    const char* path;
    const char* package;
};

/// Where Debian's packages put them.
constexpr std::array<FontFile, 4> kFontFiles = {{
    {"/usr/share/fonts/opentype/inter/Inter-Regular.otf", "fonts-inter"},
    {"/usr/share/fonts/opentype/inter/Inter-Medium.otf", "fonts-inter"},
    {"/usr/share/fonts/opentype/inter/Inter-SemiBold.otf", "fonts-inter"},
    {"/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf", "fonts-dejavu-core"},
}};

struct Unref {
    void operator()(void* object) const { g_object_unref(object); }
    void operator()(FcConfig* config) const { FcConfigDestroy(config); }
    void operator()(PangoFontDescription* d) const { pango_font_description_free(d); }
    void operator()(PangoAttrList* list) const { pango_attr_list_unref(list); }
    void operator()(cairo_font_options_t* options) const { cairo_font_options_destroy(options); }
};
template <class T>
using Held = std::unique_ptr<T, Unref>;

PangoWeight weight_of(Strength strength) {
    switch (strength) {
        case Strength::regular:
            return PANGO_WEIGHT_NORMAL;
        case Strength::medium:
            return PANGO_WEIGHT_MEDIUM;
        case Strength::semibold:
            return PANGO_WEIGHT_SEMIBOLD;
    }
    return PANGO_WEIGHT_NORMAL;
}

/// Shapes must not depend on the size of a pixel, or pages would differ by output.
void set_unhinted(PangoContext* context) {
    const Held<cairo_font_options_t> options(cairo_font_options_create());
    cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
    pango_cairo_context_set_font_options(context, options.get());
    pango_cairo_context_set_resolution(context, 72.0);  // so that a point is a unit of the page
    pango_context_set_round_glyph_positions(context, FALSE);
}

void set_font(PangoLayout* layout, const TextStyle& style) {
    const Held<PangoFontDescription> font(pango_font_description_new());
    pango_font_description_set_family(font.get(), "Inter, DejaVu Sans");
    pango_font_description_set_weight(font.get(), weight_of(style.strength));
    pango_font_description_set_absolute_size(font.get(), style.size_pt * PANGO_SCALE);
    pango_layout_set_font_description(layout, font.get());
    const Held<PangoAttrList> attributes(pango_attr_list_new());
    pango_attr_list_insert(attributes.get(), pango_attr_font_features_new("tnum=1"));
    pango_layout_set_attributes(layout, attributes.get());
}

void set_lines(PangoLayout* layout, const TextStyle& style) {
    if (style.wrap_pt > 0.0) {
        pango_layout_set_width(layout, static_cast<int>(style.wrap_pt * PANGO_SCALE));
        pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
    }
    if (style.ellipsis) pango_layout_set_ellipsize(layout, PANGO_ELLIPSIZE_END);
    pango_layout_set_line_spacing(layout, static_cast<float>(style.leading));
    if (style.anchor == drawing::Anchor::right)
        pango_layout_set_alignment(layout, PANGO_ALIGN_RIGHT);
    if (style.anchor == drawing::Anchor::centre)
        pango_layout_set_alignment(layout, PANGO_ALIGN_CENTER);
}

double points(int pango_units) {
    return static_cast<double>(pango_units) / PANGO_SCALE;
}

double left_of(double x, double width, drawing::Anchor anchor) {
    if (anchor == drawing::Anchor::right) return x - width;
    return anchor == drawing::Anchor::centre ? x - 0.5 * width : x;
}

}  // namespace

struct Lettering::Fonts {
    Held<FcConfig> config;
    Held<PangoFontMap> map;
    Held<PangoContext> context;
    int unknown_glyphs = 0;

    Held<PangoLayout> layout(const std::string& text, const TextStyle& style) const {
        Held<PangoLayout> made(pango_layout_new(context.get()));
        set_font(made.get(), style);
        set_lines(made.get(), style);
        pango_layout_set_text(made.get(), text.c_str(), static_cast<int>(text.size()));
        return made;
    }
};

base::Result<Lettering> Lettering::open() {
    auto fonts = std::make_shared<Fonts>();
    fonts->config.reset(FcConfigCreate());
    for (const FontFile& file : kFontFiles) {
        const auto* path = reinterpret_cast<const FcChar8*>(file.path);
        if (!FcConfigAppFontAddFile(fonts->config.get(), path))
            return base::Problem{.file = file.path,
                                 .line = 0,
                                 .where = {},
                                 .what = "the typeface for documents is missing",
                                 .mend = std::string("install the package ") + file.package};
    }
    fonts->map.reset(pango_cairo_font_map_new_for_font_type(CAIRO_FONT_TYPE_FT));
    pango_fc_font_map_set_config(PANGO_FC_FONT_MAP(fonts->map.get()), fonts->config.get());
    fonts->context.reset(pango_font_map_create_context(fonts->map.get()));
    set_unhinted(fonts->context.get());
    return Lettering(std::move(fonts));
}

TextSize Lettering::measured(const std::string& text, const TextStyle& style) const {
    const auto layout = fonts_->layout(text, style);
    PangoRectangle logical;
    pango_layout_get_extents(layout.get(), nullptr, &logical);
    return {points(logical.width), points(logical.height),
            points(pango_layout_get_baseline(layout.get()))};
}

TextSize Lettering::draw(
    cairo_t* to, double x, double y, const std::string& text, const TextStyle& style) const {
    const auto layout = fonts_->layout(text, style);
    PangoRectangle logical;
    pango_layout_get_extents(layout.get(), nullptr, &logical);
    const TextSize size{points(logical.width), points(logical.height),
                        points(pango_layout_get_baseline(layout.get()))};
    cairo_save(to);
    cairo_set_source_rgb(to, style.colour.r, style.colour.g, style.colour.b);
    cairo_move_to(to, left_of(x, size.width, style.anchor) - points(logical.x), y);
    pango_cairo_show_layout(to, layout.get());
    cairo_restore(to);
    fonts_->unknown_glyphs += pango_layout_get_unknown_glyphs_count(layout.get());
    return size;
}

int Lettering::unknown_glyphs() const {
    return fonts_->unknown_glyphs;
}

}  // namespace rakeline::report
