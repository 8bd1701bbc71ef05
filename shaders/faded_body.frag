// A body that has faded: a breath of glass that adds a little at grazing sight, whatever it is made of.
in vec3 v_world;
in vec3 v_normal;
out vec4 o_light;

uniform float u_level;   // how far it has faded
uniform int u_by_plane;  // 1: cut by the plane x = u_section_x
uniform float u_section_x;

void main() {
    if (u_by_plane == 1 && v_world.x < u_section_x) discard;
    float facing = abs(dot(normalize(v_normal), normalize(eye.xyz - v_world)));
    float graze = (1.0 - facing) * (1.0 - facing);
#ifdef LIGHT_IS_INK
    o_light = vec4(vec3(u_level * (0.006 + 0.060 * graze)), 1.0);
#else
    o_light = vec4(u_level * (0.0015 + 0.020 * graze * graze) * vec3(0.75, 0.88, 1.0), 1.0);
#endif
}
