// Glass only adds: a faint cool veil, what its faces mirror, a bright rim at grazing sight.
in vec3 v_world;
in vec3 v_normal;
out vec4 o_light;

uniform vec3 u_tint;
uniform float u_highlight;
uniform float u_level;  // less than 1: the part has faded

void main() {
    vec3 n = normalize(v_normal);
    vec3 to_eye = normalize(eye.xyz - v_world);
    bool near_face = dot(n, to_eye) > 0.0;
    if (!near_face) n = -n;
    float graze = 1.0 - dot(n, to_eye);
    float graze2 = graze * graze;
    float mirrored = 0.09 + 0.91 * graze2 * graze2 * graze;  // after Schlick 1994; brighter than glass at normal sight, to be seen
    float room = studio(reflect(-to_eye, n));
#ifdef LIGHT_IS_INK
    float density = 0.07 + 0.35 * mirrored * (0.4 + room) + 0.10 * u_highlight;
    o_light = vec4(u_level * density * (1.15 - u_tint), 1.0);
#else
    vec3 veil = u_tint * (0.022 + 0.060 * graze2);
    vec3 face = mix(u_tint, vec3(1.0), 0.5) * mirrored * room * (near_face ? 0.80 : 0.35);
    o_light = vec4(u_level * (veil + face) + u_highlight * 0.05 * u_tint, 1.0);
#endif
}
