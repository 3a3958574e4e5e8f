// SPDX-License-Identifier: MIT
// What stands between the faces of the room and is soft, so drawn at half size: contact shading,
// and the veil of the beams.
in vec2 view_uv;
uniform sampler2D depths;
uniform int shade_contact;
uniform vec4 from_depth;  // view z = x / (depth * y + z); w: pixels a metre at one metre
uniform vec2 tangents;    // half the field's width and height at one metre
uniform float radius;     // of contact shading, metres
uniform mat4 room_from_camera;  // without scale

const int kMostBeams = 4;
const int kBeamPlanes = 5;
uniform int beam_count;
uniform vec3 beam_lens[kMostBeams];
uniform float beam_throw[kMostBeams];
uniform vec4 beam_planes[kBeamPlanes * kMostBeams];  // inside where dot(xyz, p) + w < 0
out vec4 air;  // openness, square root of the veil

vec3 point_at(vec2 uv) {
    float z = from_depth.x / (textureLod(depths, uv, 0.0).r * from_depth.y + from_depth.z);
    return vec3((2.0 * uv - 1.0) * tangents * z, -z);
}

// How much of the sky over a point its neighbours leave open, from the depths around it (the
// estimator of McGuire et al., "The Alchemy Screen-Space Ambient Obscurance Algorithm", 2011).
float openness(vec3 p, vec3 n) {
    vec2 size = vec2(textureSize(depths, 0));
    float reach = clamp(from_depth.w * radius / -p.z, 3.0, 48.0);
    // Four turns of the pattern, one for each pixel of a block of two by two.
    ivec2 cell = ivec2(gl_FragCoord.xy) & 1;
    float turn = float(cell.x + 2 * cell.y) * 0.6;
    float start = 0.25 + 0.25 * float(cell.x ^ cell.y);
    float sum = 0.0;
    const int kTaps = 8;
    for (int i = 0; i < kTaps; ++i) {
        float t = (float(i) + start) / float(kTaps);
        float angle = turn + float(i) * 2.3999632;
        vec3 v = point_at(view_uv + reach * t * vec2(cos(angle), sin(angle)) / size) - p;
        float d2 = dot(v, v);
        float fade = max(1.0 - d2 / (radius * radius), 0.0);
        sum += fade * max(dot(v, n) - 0.012 + 0.0012 * p.z, 0.0) / (d2 + 0.02);
    }
    return clamp(1.0 - 1.24 * radius * sum / float(kTaps), 0.0, 1.0);
}

// Light that the air scatters toward the eye along a ray, in a beam that thins with the square of
// the distance from its lens: the integral of dt/r^2 is an arc tangent.
float veil(int beam, vec3 from, vec3 dir, float to) {
    float near = 0.0;
    float far = to;
    for (int i = 0; i < kBeamPlanes; ++i) {
        vec4 side = beam_planes[kBeamPlanes * beam + i];
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
    // The difference of two arc tangents as one.
    float a = (far - nearest) / apart;
    float b = (near - nearest) / apart;
    return atan(a - b, 1.0 + a * b) / apart * beam_throw[beam];
}

void main() {
    vec3 p = point_at(view_uv);
    float open = 1.0;
    if (shade_contact != 0) open = openness(p, normalize(cross(dFdx(p), dFdy(p))));
    float far = length(p);
    vec3 dir = mat3(room_from_camera) * (p / far);
    float glow = 0.0;
    for (int i = 0; i < beam_count; ++i) glow += veil(i, room_from_camera[3].xyz, dir, far);
    glow *= 0.030;
    glow = 0.5 * glow / (0.5 + glow);
    float noise = fract(52.9829189 * fract(dot(gl_FragCoord.xy, vec2(0.06711056, 0.00583715))));
    air = vec4(open, sqrt(glow) + (noise - 0.5) / 255.0, 0.0, 1.0);
}
