// SPDX-License-Identifier: MIT
#pragma once

#include "view/gpu_objects.hpp"

namespace rakeline::view {

/// The framebuffers that one view is drawn through, remade when its size changes: multisampled
/// room, the same resolved to textures, contact shading at half size.
class RenderTargets {
public:
    void resize(int width, int height);
    int width() const { return width_; }
    int height() const { return height_; }

    /// Each makes its framebuffer current, with a viewport over all of it.
    void begin_room() const;
    void begin_contact() const;
    /// From the multisampled framebuffer to the textures.
    void resolve() const;

    unsigned room_texture() const { return room_.name(); }
    unsigned depth_texture() const { return depth_.name(); }
    unsigned contact_texture() const { return contact_.name(); }

private:
    void make_sampled(int samples) const;
    void make_resolved() const;
    void make_contact() const;

    int width_ = 0;
    int height_ = 0;
    GpuFramebuffer sampled_frame_, resolved_frame_, contact_frame_;
    GpuRenderbuffer sampled_colour_, sampled_depth_;
    GpuTexture room_, depth_, contact_;
};

}  // namespace rakeline::view
