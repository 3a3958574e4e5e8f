// SPDX-License-Identifier: MIT
#include "desk/widgets/caution_line.hpp"

#include "desk/widgets/controls.hpp"
#include "desk/widgets/text.hpp"
#include "report/report.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace rakeline::desk {

void caution_line(const PanelInput& in, Workspace& w, std::string_view title) {
    const Theme& t = in.theme;
    for (const report::Caution& caution : report::cautions()) {
        if (caution.title != title) continue;
        ImGui::PushID(caution.title);
        const ImVec2 at = ImGui::GetCursorScreenPos();
        const float width = ImGui::GetContentRegionAvail().x;
        if (ImGui::InvisibleButton("##caution", {std::max(width, 1.0f), t.px(26)}))
            w.cautions_open = true;
        paint_text(*ImGui::GetWindowDrawList(), t.font.small, {at.x, at.y + t.px(6)}, t.colour.lamp,
                   fitted(t.font.small, std::string("△ caution: ") + caution.title, width));
        hint(t, caution.title, caution.text);
        ImGui::PopID();
    }
}

}  // namespace rakeline::desk
