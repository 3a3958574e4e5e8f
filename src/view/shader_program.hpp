// SPDX-License-Identifier: MIT
#pragma once

#include <glm/mat4x4.hpp>
#include <glm/vec2.hpp>
#include <glm/vec3.hpp>
#include <glm/vec4.hpp>

#include <initializer_list>
#include <string>

namespace rakeline::view {

/// A linked GLSL program and its uniforms. A shader of ours that does not compile is a fault of
/// ours: its log goes to standard error and the program stops.
class ShaderProgram {
public:
    /// Each stage is its texts one after the other, under "#version 330 core".
    using Texts = std::initializer_list<const char*>;
    ShaderProgram(Texts vertex, Texts fragment);
    ~ShaderProgram();
    ShaderProgram(const ShaderProgram&) = delete;
    ShaderProgram& operator=(const ShaderProgram&) = delete;

    void use() const;
    /// Uniforms of the program in use; names that the program does not have are passed over.
    void set(const char* name, int value) const;
    void set(const char* name, float value) const;
    void set(const char* name, const glm::vec2& value) const;
    void set(const char* name, const glm::vec3& value) const;
    void set(const char* name, const glm::vec4& value) const;
    void set(const char* name, const glm::mat4& value) const;
    void set(const std::string& name, std::size_t index, float value) const;
    void set(const std::string& name, std::size_t index, const glm::vec3& value) const;
    void set(const std::string& name, std::size_t index, const glm::vec4& value) const;

private:
    int location(const char* name) const;
    unsigned program_ = 0;
};

}  // namespace rakeline::view
