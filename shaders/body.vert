// Matt anodised metal, blackened baffles, mirrors and bright rings under a soft studio, lit at the vertices: the
// sheen is broad and the curves finely divided, so that pixels need no more than a blend.
layout(location = 0) in vec3 a_position;
layout(location = 1) in vec3 a_normal;
out vec3 v_world;
out vec3 v_colour;   // display colour

uniform int u_finish;  // 0 metal, 1 blackened, 2 mirror, 3 ring
uniform vec3 u_tint;
uniform int u_is_shell;
uniform vec3 u_axis_point;
uniform vec3 u_axis;
uniform float u_highlight;

vec3 to_eye;

vec3 lit(vec3 n, vec3 albedo, float gloss) {
    vec3 key = normalize(-0.50 * right.xyz + 0.80 * up.xyz + 0.55 * back.xyz);
    vec3 rim = normalize(0.80 * right.xyz + 0.25 * up.xyz - 0.50 * back.xyz);
    float sky = 0.5 + 0.5 * dot(n, up.xyz);
    float h = max(dot(n, normalize(key + to_eye)), 0.0);
    float h4 = h * h * h * h;
    float sheen = h4 * h4 * h4;  // broad, as of bead-blasted aluminium
    float graze = 1.0 - max(dot(n, to_eye), 0.0);
    float edge = graze * graze * graze;
    vec3 colour = albedo * (mix(0.12, 0.42, sky) + 0.85 * max(dot(n, key), 0.0));
    colour += gloss * (0.14 * sheen + 0.16 * edge * (0.3 + 0.7 * sky)) * vec3(0.86, 0.94, 1.0);
    colour += gloss * 0.14 * max(dot(n, rim), 0.0) * (0.4 + edge) * vec3(0.75, 0.88, 1.0);
    return colour;
}

// The blackened hollow of a tube: dim, but round.
vec3 hollow(vec3 n) {
    vec3 key = normalize(-0.60 * right.xyz + 0.60 * up.xyz + 0.50 * back.xyz);
    float facing = max(dot(n, to_eye), 0.0);
    float from_above = max(dot(n, key), 0.0);
    if (LIGHT_GROUND) return mix(vec3(0.60), vec3(0.90), 0.4 * facing + 0.6 * from_above) * vec3(0.96, 0.98, 1.0);
    return u_tint * (0.02 + 0.05 * facing * facing + 0.17 * from_above * from_above) * vec3(0.85, 0.95, 1.12) + 0.004;
}

vec3 shade(vec3 n, bool inside) {
    vec3 metal = LIGHT_GROUND ? 0.55 * u_tint + 0.35 : u_tint;  // print spares ink
    vec3 colour;
    if (inside) {
        colour = hollow(n);
    } else if (u_finish == 2) {
        colour = u_tint * (0.18 + 0.75 * studio(reflect(-to_eye, n))) + 0.05;
    } else if (u_finish == 1) {
        colour = lit(n, 0.30 * metal, 0.35);
    } else if (u_finish == 3) {
        colour = lit(n, 1.15 * metal + 0.04, 1.4);
    } else {
        colour = lit(n, 0.55 * metal, 0.8);
    }
    colour += u_highlight * (0.05 * vec3(0.55, 0.80, 1.0) + 0.10 * u_tint);
    float depth = dot(eye.xyz - a_position, back.xyz);
    float far = clamp((depth / eye.w - 1.0) * 0.8, 0.0, 1.0);
    return display(mix(colour, ground(0.6), 0.35 * far));
}

void main() {
    to_eye = normalize(eye.xyz - a_position);
    vec3 d = a_position - u_axis_point;
    vec3 across = normalize(d - dot(d, u_axis) * u_axis + 1e-6);
    v_world = a_position;
    v_colour = shade(a_normal, u_is_shell == 1 && dot(a_normal, across) < -0.05);
    gl_Position = clip_from_world * vec4(a_position, 1.0);
}
