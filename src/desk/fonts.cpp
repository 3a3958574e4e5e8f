// SPDX-License-Identifier: MIT
#include "desk/theme.hpp"

#include <imgui.h>
#include <imgui_freetype.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <string>

namespace rakeline::desk {
namespace {

/// Latin, Greek, Cyrillic, punctuation, arrows, mathematics, technical, shapes, dingbats.
constexpr ImWchar kLetters[] = {0x0020, 0x024F, 0x0370, 0x052F, 0x1E00, 0x1EFF, 0x2000, 0x206F,
                                0x2070, 0x209F, 0x20A0, 0x20BF, 0x2100, 0x214F, 0};
constexpr ImWchar kSigns[] = {0x2190, 0x21FF, 0x2200, 0x22FF, 0x2300, 0x23FF,
                              0x25A0, 0x25FF, 0x2700, 0x27BF, 0};

std::string first_existing(std::initializer_list<const char*> paths) {
    for (const char* path : paths)
        if (std::filesystem::exists(path)) return path;
    return {};
}

std::string inter(const char* weight) {
    const std::string file = std::string("Inter-") + weight;
    return first_existing({("/usr/share/fonts/opentype/inter/" + file + ".otf").c_str(),
                           ("/usr/share/fonts/truetype/inter/" + file + ".ttf").c_str(),
                           ("/usr/local/share/fonts/" + file + ".otf").c_str()});
}

std::string dejavu() {
    return first_existing({"/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf",
                           "/usr/share/fonts/TTF/DejaVuSans.ttf",
                           "/usr/local/share/fonts/DejaVuSans.ttf"});
}

ImFont* add_font(const char* weight, float size) {
    ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    const std::string face = inter(weight);
    const std::string signs = dejavu();
    ImFont* font = nullptr;
    if (!face.empty()) font = atlas.AddFontFromFileTTF(face.c_str(), size, nullptr, kLetters);
    if (signs.empty()) {
        if (font) return font;
        ImFontConfig own;
        own.SizePixels = size;
        return atlas.AddFontDefault(&own);
    }
    ImFontConfig merge;
    merge.MergeMode = font != nullptr;
    // Inter leaves out a few letters that DejaVu has, so the signs' font is asked for both.
    ImFont* merged = atlas.AddFontFromFileTTF(signs.c_str(), size, &merge, kLetters);
    merge.MergeMode = true;
    atlas.AddFontFromFileTTF(signs.c_str(), size, &merge, kSigns);
    return font ? font : merged;
}

/// Gives all digits the advance of the widest, each centred in it: columns of figures line up.
void make_tabular(ImFont& font) {
    // Whole pixels: a digit between two pixels would be blurred.
    float widest = 0.0f;
    for (ImWchar c = '0'; c <= '9'; ++c)
        if (const ImFontGlyph* glyph = font.FindGlyphNoFallback(c))
            widest = std::max(widest, glyph->AdvanceX);
    widest = std::ceil(widest);
    for (ImFontGlyph& glyph : font.Glyphs) {
        if (glyph.Codepoint < '0' || glyph.Codepoint > '9') continue;
        const float shift = std::floor((widest - glyph.AdvanceX) / 2.0f);
        glyph.X0 += shift;
        glyph.X1 += shift;
        glyph.AdvanceX = widest;
    }
    font.BuildLookupTable();
}

}  // namespace

Fonts build_fonts(float raster_scale) {
    ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    atlas.Clear();
    atlas.FontBuilderIO = ImGuiFreeType::GetBuilderForFreeType();
    atlas.FontBuilderFlags = ImGuiFreeTypeBuilderFlags_LightHinting;
    atlas.TexDesiredWidth = raster_scale > 1.6f ? 4096 : 2048;
    const Fonts fonts{.small = add_font("Regular", std::round(13.0f * raster_scale)),
                      .body = add_font("Regular", std::round(16.0f * raster_scale)),
                      .figures = add_font("Medium", std::round(16.0f * raster_scale)),
                      .small_figures = add_font("Medium", std::round(13.0f * raster_scale)),
                      .title = add_font("SemiBold", std::round(21.0f * raster_scale))};
    atlas.Build();
    make_tabular(*fonts.figures);
    make_tabular(*fonts.small_figures);
    return fonts;
}

}  // namespace rakeline::desk
