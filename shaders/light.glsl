// SPDX-License-Identifier: MIT
// A hall before the show: little warm light from above, and what the picture gives. Linear.
uniform vec3 picture_centre;
uniform vec3 picture_right;  // half the picture's width
uniform vec3 picture_up;     // half its height
uniform vec3 picture_normal;

// Light from the picture, as from a lamp at its middle; the wrap and what is added to the distance
// stand for its breadth.
vec3 picture_glow(vec3 p, vec3 n) {
    vec3 to = picture_centre - p;
    float d2 = dot(to, to);
    vec3 dir = to * inversesqrt(d2);
    float leaving = max(-dot(dir, picture_normal), 0.0);
    float arriving = max(dot(n, dir) * 0.8 + 0.2, 0.0);
    float breadth2 = dot(picture_right, picture_right);
    float area = 4.0 * sqrt(breadth2 * dot(picture_up, picture_up));
    return vec3(0.92, 0.88, 0.80) * (0.46 * area * leaving * arriving / (d2 + 0.3 * breadth2));
}

// Soft warm light from the ceiling over a dim fill.
vec3 house_light(vec3 n) {
    vec3 fill = mix(vec3(0.085, 0.080, 0.088), vec3(0.25, 0.225, 0.20), 0.5 + 0.5 * n.y);
    float above = max(dot(n, normalize(vec3(0.22, 0.90, 0.38))), 0.0);
    return fill + above * vec3(0.34, 0.285, 0.225);
}
