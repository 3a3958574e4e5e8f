// SPDX-License-Identifier: MIT
#include "view/render_targets.hpp"

#include "base/assert.hpp"

#include <epoxy/gl.h>

#include <algorithm>

namespace rakeline::view {
namespace {

constexpr GLint kSamples = 4;
constexpr GLenum kColourFormat = GL_RGBA8;  // square roots of colours, see store.glsl
constexpr GLenum kDepthFormat = GL_DEPTH_COMPONENT24;

struct TextureShape {
    GLenum inner = GL_RGBA8;
    GLenum format = GL_RGBA;
    GLenum type = GL_UNSIGNED_BYTE;
    GLint filter = GL_NEAREST;
    int width = 1;
    int height = 1;
};

void shape_texture(const GpuTexture& texture, const TextureShape& s) {
    glBindTexture(GL_TEXTURE_2D, texture.name());
    glTexImage2D(GL_TEXTURE_2D, 0, static_cast<GLint>(s.inner), s.width, s.height, 0, s.format,
                 s.type, nullptr);
    for (const GLenum filter : {GL_TEXTURE_MIN_FILTER, GL_TEXTURE_MAG_FILTER}) {
        glTexParameteri(GL_TEXTURE_2D, filter, s.filter);
    }
    for (const GLenum wrap : {GL_TEXTURE_WRAP_S, GL_TEXTURE_WRAP_T}) {
        glTexParameteri(GL_TEXTURE_2D, wrap, GL_CLAMP_TO_EDGE);
    }
    glBindTexture(GL_TEXTURE_2D, 0);
}

void attach_texture(const GpuTexture& texture, GLenum attachment) {
    glFramebufferTexture2D(GL_FRAMEBUFFER, attachment, GL_TEXTURE_2D, texture.name(), 0);
}

void check_complete() {
    RL_ASSERT(glCheckFramebufferStatus(GL_FRAMEBUFFER) == GL_FRAMEBUFFER_COMPLETE);
}

int half_of(int pixels) {
    return std::max(1, (pixels + 1) / 2);
}

}  // namespace

void RenderTargets::resize(int width, int height) {
    RL_ASSERT(width > 0 && height > 0);
    if (width == width_ && height == height_) return;
    width_ = width;
    height_ = height;
    GLint most = 1;
    glGetIntegerv(GL_MAX_SAMPLES, &most);
    make_sampled(std::min(kSamples, most));
    make_resolved();
    make_air();
}

void RenderTargets::make_sampled(int samples) const {
    const auto shape = [&](const GpuRenderbuffer& buffer, GLenum format, GLenum attachment) {
        glBindRenderbuffer(GL_RENDERBUFFER, buffer.name());
        glRenderbufferStorageMultisample(GL_RENDERBUFFER, samples, format, width_, height_);
        glFramebufferRenderbuffer(GL_FRAMEBUFFER, attachment, GL_RENDERBUFFER, buffer.name());
    };
    glBindFramebuffer(GL_FRAMEBUFFER, sampled_frame_.name());
    shape(sampled_colour_, kColourFormat, GL_COLOR_ATTACHMENT0);
    shape(sampled_depth_, kDepthFormat, GL_DEPTH_ATTACHMENT);
    check_complete();
}

void RenderTargets::make_resolved() const {
    shape_texture(room_, {.inner = kColourFormat, .width = width_, .height = height_});
    shape_texture(depth_, {.inner = kDepthFormat,
                           .format = GL_DEPTH_COMPONENT,
                           .type = GL_UNSIGNED_INT,
                           .width = width_,
                           .height = height_});
    glBindFramebuffer(GL_FRAMEBUFFER, resolved_frame_.name());
    attach_texture(room_, GL_COLOR_ATTACHMENT0);
    attach_texture(depth_, GL_DEPTH_ATTACHMENT);
    check_complete();
}

void RenderTargets::make_air() const {
    shape_texture(air_, {.inner = GL_RG8,
                         .format = GL_RG,
                         .filter = GL_LINEAR,
                         .width = half_of(width_),
                         .height = half_of(height_)});
    glBindFramebuffer(GL_FRAMEBUFFER, air_frame_.name());
    attach_texture(air_, GL_COLOR_ATTACHMENT0);
    check_complete();
}

void RenderTargets::begin_room() const {
    glBindFramebuffer(GL_FRAMEBUFFER, sampled_frame_.name());
    glViewport(0, 0, width_, height_);
}

void RenderTargets::begin_air() const {
    glBindFramebuffer(GL_FRAMEBUFFER, air_frame_.name());
    glViewport(0, 0, half_of(width_), half_of(height_));
}

void RenderTargets::resolve() const {
    glBindFramebuffer(GL_READ_FRAMEBUFFER, sampled_frame_.name());
    glBindFramebuffer(GL_DRAW_FRAMEBUFFER, resolved_frame_.name());
    glBlitFramebuffer(0, 0, width_, height_, 0, 0, width_, height_,
                      GL_COLOR_BUFFER_BIT | GL_DEPTH_BUFFER_BIT, GL_NEAREST);
}

}  // namespace rakeline::view
