// SPDX-License-Identifier: MIT
#include "desk/format_changes.hpp"

#include "study/register.hpp"

#include <algorithm>

namespace rakeline::desk {
namespace {

bool has(const std::vector<int>& formats, int format) {
    return std::find(formats.begin(), formats.end(), format) != formats.end();
}

/// From and to among the sheet's formats, apart from each other where there are two.
void keep_formats(Workspace& w, const study::ChangeSheet& sheet) {
    if (sheet.formats.empty()) return;
    const auto other_than = [&](int format) {
        for (const int f : sheet.formats)
            if (f != format) return f;
        return format;
    };
    if (!has(sheet.formats, w.change.to))
        w.change.to = has(sheet.formats, w.format) ? w.format : sheet.formats.front();
    if (!has(sheet.formats, w.change.from) || w.change.from == w.change.to)
        w.change.from = other_than(w.change.to);
}

/// Another machine than the one looked at, where there are two.
void keep_machine(Workspace& w, int machines) {
    if (w.change.machine < machines && w.change.machine != w.projector) return;
    w.change.machine = w.projector == 0 ? std::min(1, machines - 1) : 0;
}

}  // namespace

const ChangeCache& format_changes(const PanelInput& in, Workspace& w) {
    ChangeCache& cache = w.change_cache;
    const bool fresh = cache.key.study != in.study_serial;
    if (fresh || cache.sheet.projector != w.projector)
        cache.sheet = study::change_sheet(*in.study, w.projector);
    keep_formats(w, cache.sheet);
    keep_machine(w, static_cast<int>(in.study->layout().projectors.size()));
    const ChangeCache::Key key{in.study_serial, w.projector, w.format,         w.change.machine,
                               w.change.from,   w.change.to, w.change.machines};
    if (cache.key == key) return cache;
    cache.key = key;
    cache.moves = study::moves(*in.study, w.projector, w.change.from, w.change.to);
    cache.machine.reset();
    if (w.change.machines && w.change.machine != w.projector)
        cache.machine = study::machine_change(*in.study, w.format, w.projector, w.change.machine);
    return cache;
}

std::string cell_meaning(const study::SheetCell& cell) {
    std::string text;
    for (const std::string& source : cell.sources) {
        const study::FigureDefinition* figure = study::find_definition(source);
        if (!text.empty()) text += "\n";
        text += figure ? std::string(figure->label) + ": " + figure->meaning
                       : "as the layout says: " + source;
    }
    return text;
}

}  // namespace rakeline::desk
