#version 330 core
// SPDX-License-Identifier: MIT
// Puts the view together: the room with its contact shading, the veil of the beams, sRGB.
in vec2 view_uv;
uniform sampler2D room;
uniform sampler2D depths;
uniform sampler2D contact;
uniform int shade_contact;
uniform vec4 from_depth;
uniform mat4 room_from_camera;  // without scale
uniform vec2 tangents;

const int kMostBeams = 4;
uniform int beam_count;
uniform vec3 beam_lens[kMostBeams];
uniform float beam_throw[kMostBeams];
uniform vec4 beam_sides[4 * kMostBeams];  // planes: inside where dot(xyz, p) + w < 0
uniform vec3 beam_colour;
out vec4 colour;

float view_depth(vec2 uv) {
    return from_depth.x / (textureLod(depths, uv, 0.0).r * from_depth.y + from_depth.z);
}

// The contact shading of this pixel from the half-size one, from the samples of like depth.
float contact_here(float z) {
    vec2 texel = 1.0 / vec2(textureSize(contact, 0));
    float sum = 1e-4;
    float open = 1e-4;
    for (int j = -1; j <= 2; ++j) {
        for (int i = -1; i <= 2; ++i) {
            vec2 at = view_uv + (vec2(i, j) - 0.5) * texel;
            float w = 1.0 / (1.0 + 40.0 * abs(view_depth(at) - z) / z * 4.0);
            sum += w;
            open += w * textureLod(contact, at, 0.0).r;
        }
    }
    return open / sum;
}

// Light that the air scatters toward the eye along a ray, in a beam that thins with the square of
// the distance from its lens: the integral of dt/r^2 is an arc tangent.
float veil(int beam, vec3 from, vec3 dir, float to) {
    float near = 0.0;
    float far = to;
    for (int i = 0; i < 4; ++i) {
        vec4 side = beam_sides[4 * beam + i];
        float slope = dot(side.xyz, dir);
        float offset = dot(side.xyz, from) + side.w;
        if (abs(slope) < 1e-7) {
            if (offset > 0.0) return 0.0;
            continue;
        }
        float t = -offset / slope;
        if (slope > 0.0) far = min(far, t);
        else near = max(near, t);
    }
    if (near >= far) return 0.0;
    vec3 to_lens = beam_lens[beam] - from;
    float nearest = dot(to_lens, dir);
    float apart = max(length(to_lens - nearest * dir), 0.12);
    return (atan((far - nearest) / apart) - atan((near - nearest) / apart)) / apart *
           beam_throw[beam];
}

vec3 encoded(vec3 c) {
    c = clamp(c, 0.0, 1.0);
    return mix(12.92 * c, 1.055 * pow(c, vec3(1.0 / 2.4)) - 0.055, step(vec3(0.0031308), c));
}

void main() {
    vec4 lit = texelFetch(room, ivec2(view_uv * vec2(textureSize(room, 0))), 0);
    float z = view_depth(view_uv);
    vec3 c = lit.rgb;
    if (shade_contact != 0 && lit.a > 0.0) c *= mix(1.0, contact_here(z), lit.a);
    vec3 ray = vec3((2.0 * view_uv - 1.0) * tangents, -1.0);
    float stretch = length(ray);
    vec3 dir = mat3(room_from_camera) * (ray / stretch);
    vec3 from = room_from_camera[3].xyz;
    float glow = 0.0;
    for (int i = 0; i < beam_count; ++i) glow += veil(i, from, dir, z * stretch);
    // Half of a code value of noise, the same for every picture, against bands in the dark.
    float noise = fract(52.9829189 * fract(dot(gl_FragCoord.xy, vec2(0.06711056, 0.00583715))));
    glow = 0.030 * glow;
    c += beam_colour * (0.5 * glow / (0.5 + glow));
    colour = vec4(encoded(c) + (noise - 0.5) / 255.0, 1.0);
}
