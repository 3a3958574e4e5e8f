# Embeds shaders/*.glsl as string constants, so that the installed binary needs no search path.
# rakeline_embed_shaders(target) gives the target "view/shader_texts.hpp" with one constant a file:
# shaders/solid.frag.glsl becomes rakeline::view::shader_texts::solid_frag.
function(rakeline_embed_shaders target)
    file(GLOB shaders CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/shaders/*.glsl)
    set(declarations "")
    set(definitions "")
    foreach(shader ${shaders})
        set_property(DIRECTORY ${CMAKE_SOURCE_DIR} APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${shader})
        get_filename_component(name ${shader} NAME)
        string(REPLACE ".glsl" "" name ${name})
        string(MAKE_C_IDENTIFIER ${name} name)
        file(READ ${shader} text)
        string(APPEND declarations "extern const char* const ${name};\n")
        string(APPEND definitions "const char* const ${name} = R\"glsl(${text})glsl\";\n")
    endforeach()
    set(generated ${CMAKE_BINARY_DIR}/generated)
    file(GENERATE OUTPUT ${generated}/view/shader_texts.hpp CONTENT
"// Generated from shaders/*.glsl by src/view/shaders.cmake.
#pragma once
namespace rakeline::view::shader_texts {
${declarations}}
")
    file(GENERATE OUTPUT ${generated}/view/shader_texts.cpp CONTENT
"// Generated from shaders/*.glsl by src/view/shaders.cmake.
#include \"view/shader_texts.hpp\"
namespace rakeline::view::shader_texts {
${definitions}}
")
    target_sources(${target} PRIVATE ${generated}/view/shader_texts.cpp)
    target_include_directories(${target} PRIVATE ${generated})
endfunction()
