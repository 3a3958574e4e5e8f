#version 330 core
// SPDX-License-Identifier: MIT
// Contact shading: how much of the sky over each point its neighbours hide, from the depths around
// it (ambient obscurance in screen space, the estimator of McGuire et al., "The Alchemy
// Screen-Space Ambient Obscurance Algorithm", 2011). Drawn at half size.
in vec2 view_uv;
uniform sampler2D depths;
uniform vec4 from_depth;  // view z = x / (depth * y + z); w: pixels a metre at one metre
uniform vec2 tangents;    // half the field's width and height at one metre
uniform float radius;     // metres
out float openness;

vec3 point_at(vec2 uv) {
    float z = from_depth.x / (textureLod(depths, uv, 0.0).r * from_depth.y + from_depth.z);
    return vec3((2.0 * uv - 1.0) * tangents * z, -z);
}

void main() {
    ivec2 size = textureSize(depths, 0);
    float depth = textureLod(depths, view_uv, 0.0).r;
    vec3 p = point_at(view_uv);
    vec3 dx = dFdx(p);
    vec3 dy = dFdy(p);
    vec3 n = normalize(cross(dx, dy));
    openness = 1.0;
    if (depth >= 1.0) return;
    float reach = clamp(from_depth.w * radius / -p.z, 3.0, 90.0);
    ivec2 cell = ivec2(gl_FragCoord.xy) & 3;
    float turn = float((cell.x * 4 + cell.y * 9 + (cell.x ^ cell.y) * 5) & 15) * 0.3926991;
    float sum = 0.0;
    const int kTaps = 9;
    for (int i = 0; i < kTaps; ++i) {
        float t = (float(i) + 0.5) / float(kTaps);
        float angle = turn + float(i) * 2.3999632;
        vec2 to = view_uv + reach * t * vec2(cos(angle), sin(angle)) / vec2(size);
        vec3 v = point_at(to) - p;
        float d2 = dot(v, v);
        float fade = max(1.0 - d2 / (radius * radius), 0.0);
        sum += fade * max(dot(v, n) - 0.012 - 0.0012 * -p.z, 0.0) / (d2 + 0.02);
    }
    openness = clamp(1.0 - 0.62 * radius * sum * 2.0 / float(kTaps), 0.0, 1.0);
}
