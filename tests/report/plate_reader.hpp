// SPDX-License-Identifier: MIT
#pragma once

#include "base/number_text.hpp"
#include "support/check.hpp"

#include <glm/common.hpp>
#include <glm/vec2.hpp>

#include <algorithm>
#include <regex>
#include <sstream>
#include <string>
#include <vector>

/// Readers of plate drawings, written apart from the writers.
namespace rakeline::tests {

using Points = std::vector<glm::dvec2>;

inline double number_in(const std::string& text) {
    const auto number = base::parse_number(text);
    REQUIRE_MESSAGE(number, text);
    return *number;
}

inline glm::dvec2 extent(const Points& points) {
    REQUIRE_FALSE(points.empty());
    glm::dvec2 least = points[0];
    glm::dvec2 most = points[0];
    for (const glm::dvec2 p : points) {
        least = glm::min(least, p);
        most = glm::max(most, p);
    }
    return most - least;
}

struct SvgPath {
    std::string id;
    bool closed = false;
    Points points;  ///< user units, y down
};

struct SvgText {
    std::string words;
    glm::dvec2 at{0.0};  ///< y down
};

struct SvgPage {
    double width_mm = 0.0, height_mm = 0.0, view_width = 0.0, view_height = 0.0;
    std::string width_unit;
    std::vector<SvgPath> paths;
    std::vector<SvgText> texts;

    glm::dvec2 text_at(const std::string& words) const {
        const auto found = std::find_if(texts.begin(), texts.end(),
                                        [&](const SvgText& t) { return t.words == words; });
        REQUIRE_MESSAGE(found != texts.end(), words);
        return found->at;
    }

    /// Points of a closed path about the crossing of the two centre lines drawn before it, y up.
    Points about_middle(const std::string& id) const {
        for (std::size_t i = 2; i < paths.size(); ++i) {
            if (paths[i].id != id) continue;
            CHECK(paths[i].closed);
            const glm::dvec2 middle(paths[i - 1].points.at(0).x, paths[i - 2].points.at(0).y);
            Points out;
            for (const glm::dvec2 p : paths[i].points)
                out.emplace_back(p.x - middle.x, middle.y - p.y);
            return out;
        }
        FAIL("no path " << id);
        return {};
    }
};

inline SvgPath read_path(const std::string& id, const std::string& d) {
    SvgPath path{id, d.back() == 'Z', {}};
    static const std::regex point("[ML](-?[0-9.]+) (-?[0-9.]+)");
    for (std::sregex_iterator p(d.begin(), d.end(), point), end; p != end; ++p)
        path.points.emplace_back(number_in((*p)[1]), number_in((*p)[2]));
    return path;
}

inline SvgPage read_svg(const std::string& svg) {
    SvgPage page;
    std::smatch m;
    static const std::regex head(
        "width=\"([0-9.]+)([a-z]+)\" height=\"([0-9.]+)mm\" viewBox=\"0 0 ([0-9.]+) ([0-9.]+)\"");
    REQUIRE(std::regex_search(svg, m, head));
    page.width_mm = number_in(m[1]);
    page.width_unit = m[2];
    page.height_mm = number_in(m[3]);
    page.view_width = number_in(m[4]);
    page.view_height = number_in(m[5]);
    static const std::regex path("<path (?:id=\"([a-z_]+)\" )?d=\"([^\"]+)\"");
    for (std::sregex_iterator p(svg.begin(), svg.end(), path), end; p != end; ++p)
        page.paths.push_back(read_path((*p)[1], (*p)[2]));
    static const std::regex text("<text x=\"([0-9.]+)\" y=\"([0-9.]+)\">([^<]*)</text>");
    for (std::sregex_iterator t(svg.begin(), svg.end(), text), end; t != end; ++t)
        page.texts.push_back({(*t)[3], {number_in((*t)[1]), number_in((*t)[2])}});
    return page;
}

struct DxfPolyline {
    std::string layer;
    bool closed = false;
    Points points;
};

struct DxfFile {
    std::string version;
    std::vector<std::string> layers;
    std::vector<DxfPolyline> polylines;
    std::vector<std::string> texts;
    Points text_places;
    int lines = 0;
};

struct DxfGroup {
    int code = 0;
    std::string value;
};

/// Pairs of lines, code and value, up to EOF and nothing after it.
inline std::vector<DxfGroup> dxf_groups(const std::string& bytes) {
    std::vector<DxfGroup> groups;
    std::istringstream in(bytes);
    std::string code;
    std::string value;
    while (std::getline(in, code)) {
        REQUIRE(std::getline(in, value));
        groups.push_back({static_cast<int>(number_in(code)), value});
    }
    REQUIRE_FALSE(groups.empty());
    CHECK(groups.back().code == 0);
    CHECK(groups.back().value == "EOF");
    return groups;
}

/// Takes one group into the object that is open.
inline void take_group(DxfFile& file, const std::string& open, const DxfGroup& g) {
    if (open == "POLYLINE" && g.code == 8) file.polylines.back().layer = g.value;
    if (open == "POLYLINE" && g.code == 70) file.polylines.back().closed = g.value == "1";
    if (open == "VERTEX" && g.code == 10) {
        file.polylines.back().points.emplace_back(number_in(g.value), 0.0);
    }
    if (open == "VERTEX" && g.code == 20) {
        file.polylines.back().points.back().y = number_in(g.value);
    }
    if (open == "LAYER" && g.code == 2) file.layers.push_back(g.value);
    if (open == "TEXT" && g.code == 10) file.text_places.emplace_back(number_in(g.value), 0.0);
    if (open == "TEXT" && g.code == 20) file.text_places.back().y = number_in(g.value);
    if (open == "TEXT" && g.code == 1) file.texts.push_back(g.value);
}

inline DxfFile read_dxf(const std::string& bytes) {
    DxfFile file;
    std::string open;
    std::string variable;
    for (const DxfGroup& g : dxf_groups(bytes)) {
        if (g.code == 9) variable = g.value;
        if (g.code == 1 && variable == "$ACADVER") file.version = g.value;
        if (g.code != 0) {
            take_group(file, open, g);
            continue;
        }
        variable.clear();
        open = g.value;
        if (open == "POLYLINE") file.polylines.emplace_back();
        if (open == "LINE") ++file.lines;
    }
    return file;
}

}  // namespace rakeline::tests
