// SPDX-License-Identifier: MIT
#pragma once

#include "desk/panel_input.hpp"
#include "desk/workspace.hpp"

/// The panels of the window. Each reads what it is given, keeps its own looks in the workspace and
/// asks for edits and actions; frame.cpp gives each its place.
namespace rakeline::desk {

void draw_top_bar(const PanelInput& in, Workspace& w, Requests& out);
void draw_rail(const PanelInput& in, Workspace& w, Requests& out);
void draw_subject_panel(const PanelInput& in, Workspace& w, Requests& out);
void draw_hall_panel(const PanelInput& in, Workspace& w, Requests& out);
void draw_drawing_panel(const PanelInput& in, Workspace& w, Requests& out);
void draw_findings_panel(const PanelInput& in, Workspace& w, Requests& out);
void draw_card_panel(const PanelInput& in, Workspace& w, Requests& out);
void draw_status_bar(const PanelInput& in, Workspace& w, Requests& out);

/// Parts of the subject panel.
void draw_figures(const PanelInput& in, Workspace& w, Requests& out);
void draw_editor(const PanelInput& in, Workspace& w, Requests& out);

/// Parts of the drawing panel: the handles of the long section. hold_floor works on the item drawn
/// last, and is true while a handle has the pointer.
void choose_floor_block(const PanelInput& in, Workspace& w);
bool hold_floor(const PanelInput& in, Workspace& w, Requests& out, const DrawingView& view);
void paint_floor_handles(const PanelInput& in, const Workspace& w, const DrawingView& view);

/// The floor that the rake solver would build, as a line over the long section.
void paint_rake_preview(const PanelInput& in, const Workspace& w, const DrawingView& view);

/// Windows that float for as long as they are wanted.
void draw_derivation(const PanelInput& in, Workspace& w, Requests& out);
void draw_lenses(const PanelInput& in, Workspace& w, Requests& out);
void draw_widths(const PanelInput& in, Workspace& w, Requests& out);
void draw_sheets(const PanelInput& in, Workspace& w, Requests& out);
void draw_change(const PanelInput& in, Workspace& w, Requests& out);
void draw_meter(const PanelInput& in, Workspace& w, Requests& out);
void draw_floor_numbers(const PanelInput& in, Workspace& w, Requests& out);
void draw_rake(const PanelInput& in, Workspace& w, Requests& out);
void draw_keys(const PanelInput& in, Workspace& w, Requests& out);
void draw_cautions(const PanelInput& in, Workspace& w, Requests& out);

}  // namespace rakeline::desk
