// SPDX-License-Identifier: MIT
#pragma once

#include "view/gpu_objects.hpp"

namespace rakeline::view {

/// The framebuffers that one view is drawn through, remade when its size changes: multisampled
/// room, the same resolved to textures, and what is soft (air.frag.glsl) at half size.
class RenderTargets {
public:
    void resize(int width, int height);
    int width() const { return width_; }
    int height() const { return height_; }

    /// Each makes its framebuffer current, with a viewport over all of it.
    void begin_room() const;
    void begin_air() const;
    /// From the multisampled framebuffer to the textures.
    void resolve() const;

    unsigned room_texture() const { return room_.name(); }
    unsigned depth_texture() const { return depth_.name(); }
    unsigned air_texture() const { return air_.name(); }

private:
    void make_sampled(int samples) const;
    void make_resolved() const;
    void make_air() const;

    int width_ = 0;
    int height_ = 0;
    GpuFramebuffer sampled_frame_, resolved_frame_, air_frame_;
    GpuRenderbuffer sampled_colour_, sampled_depth_;
    GpuTexture room_, depth_, air_;
};

}  // namespace rakeline::view
