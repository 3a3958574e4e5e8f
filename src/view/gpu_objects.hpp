// SPDX-License-Identifier: MIT
#pragma once

#include <utility>

/// Owners of GL names: made in the constructor, deleted in the destructor, moved but not copied.
/// They need the context that made them to be current.
namespace rakeline::view {

enum class GpuKind { buffer, vertex_array, texture, renderbuffer, framebuffer };
unsigned make_gpu_name(GpuKind kind);
void delete_gpu_name(GpuKind kind, unsigned name);

template <GpuKind kKind>
class GpuObject {
public:
    GpuObject() : name_(make_gpu_name(kKind)) {}
    ~GpuObject() {
        if (name_ != 0) delete_gpu_name(kKind, name_);
    }
    GpuObject(GpuObject&& other) noexcept : name_(std::exchange(other.name_, 0)) {}
    GpuObject& operator=(GpuObject&& other) noexcept {
        std::swap(name_, other.name_);
        return *this;
    }
    unsigned name() const { return name_; }

private:
    unsigned name_ = 0;
};

using GpuBuffer = GpuObject<GpuKind::buffer>;
using GpuVertexArray = GpuObject<GpuKind::vertex_array>;
using GpuTexture = GpuObject<GpuKind::texture>;
using GpuRenderbuffer = GpuObject<GpuKind::renderbuffer>;
using GpuFramebuffer = GpuObject<GpuKind::framebuffer>;

}  // namespace rakeline::view
