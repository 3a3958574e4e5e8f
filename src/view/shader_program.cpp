// SPDX-License-Identifier: MIT
#include "view/shader_program.hpp"

#include "base/assert.hpp"

#include <epoxy/gl.h>
#include <glm/gtc/type_ptr.hpp>

#include <cstdio>
#include <vector>

namespace rakeline::view {
namespace {

constexpr int kLogBytes = 2048;

GLuint compiled(GLenum stage, ShaderProgram::Texts texts) {
    const GLuint shader = glCreateShader(stage);
    std::vector<const char*> all = {"#version 330 core\n"};
    all.insert(all.end(), texts.begin(), texts.end());
    glShaderSource(shader, static_cast<GLsizei>(all.size()), all.data(), nullptr);
    glCompileShader(shader);
    GLint good = GL_FALSE;
    glGetShaderiv(shader, GL_COMPILE_STATUS, &good);
    if (good != GL_TRUE) {
        char log[kLogBytes] = {};
        glGetShaderInfoLog(shader, kLogBytes, nullptr, log);
        std::fputs(log, stderr);
    }
    RL_ASSERT(good == GL_TRUE);
    return shader;
}

std::string element(const std::string& name, std::size_t index) {
    return name + "[" + std::to_string(index) + "]";
}

}  // namespace

ShaderProgram::ShaderProgram(Texts vertex_texts, Texts fragment_texts)
    : program_(glCreateProgram()) {
    const GLuint vertex = compiled(GL_VERTEX_SHADER, vertex_texts);
    const GLuint fragment = compiled(GL_FRAGMENT_SHADER, fragment_texts);
    glAttachShader(program_, vertex);
    glAttachShader(program_, fragment);
    glLinkProgram(program_);
    glDeleteShader(vertex);
    glDeleteShader(fragment);
    GLint good = GL_FALSE;
    glGetProgramiv(program_, GL_LINK_STATUS, &good);
    if (good != GL_TRUE) {
        char log[kLogBytes] = {};
        glGetProgramInfoLog(program_, kLogBytes, nullptr, log);
        std::fputs(log, stderr);
    }
    RL_ASSERT(good == GL_TRUE);
}

ShaderProgram::~ShaderProgram() {
    glDeleteProgram(program_);
}

void ShaderProgram::use() const {
    glUseProgram(program_);
}

int ShaderProgram::location(const char* name) const {
    return glGetUniformLocation(program_, name);
}

void ShaderProgram::set(const char* name, int value) const {
    glUniform1i(location(name), value);
}
void ShaderProgram::set(const char* name, float value) const {
    glUniform1f(location(name), value);
}
void ShaderProgram::set(const char* name, const glm::vec2& value) const {
    glUniform2fv(location(name), 1, glm::value_ptr(value));
}
void ShaderProgram::set(const char* name, const glm::vec3& value) const {
    glUniform3fv(location(name), 1, glm::value_ptr(value));
}
void ShaderProgram::set(const char* name, const glm::vec4& value) const {
    glUniform4fv(location(name), 1, glm::value_ptr(value));
}
void ShaderProgram::set(const char* name, const glm::mat4& value) const {
    glUniformMatrix4fv(location(name), 1, GL_FALSE, glm::value_ptr(value));
}
void ShaderProgram::set(const std::string& name, std::size_t index, float value) const {
    set(element(name, index).c_str(), value);
}
void ShaderProgram::set(const std::string& name, std::size_t index, const glm::vec3& value) const {
    set(element(name, index).c_str(), value);
}
void ShaderProgram::set(const std::string& name, std::size_t index, const glm::vec4& value) const {
    set(element(name, index).c_str(), value);
}

}  // namespace rakeline::view
