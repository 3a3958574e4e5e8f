// SPDX-License-Identifier: MIT
// The room's own parts, lit pixel by pixel since their faces are large.
out vec3 room_position;
flat out vec3 room_normal;
flat out vec3 albedo;

// Linear reflectance by drawing::Material.
vec3 albedo_of(int kind) {
    switch (kind) {
        case 0: return vec3(0.036, 0.033, 0.039);     // floor
        case 1: return vec3(0.30, 0.265, 0.215);      // step edge
        case 2: return vec3(0.050, 0.043, 0.041);     // wall
        case 3: return vec3(0.035, 0.033, 0.034);     // ceiling
        case 4: return vec3(0.050, 0.045, 0.044);     // booth wall
        case 5: return vec3(0.16, 0.13, 0.095);       // port
        case 6: return vec3(0.0055, 0.0055, 0.006);   // masking
        case 7: return vec3(0.028, 0.028, 0.030);     // back of the screen
        case 10: return mix(vec3(0.050, 0.049, 0.052), vec3(0.022, 0.022, 0.024), uv.x);
        case 11: return vec3(0.085, 0.084, 0.088);    // projector
    }
    return vec3(0.1);
}

void main() {
    room_position = placed_position();
    room_normal = placed_normal();
    albedo = albedo_of(int(material + 0.5));
    gl_Position = clip_position(room_position);
}
