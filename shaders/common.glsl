// Shared by all shaders: the view, the sRGB curves, the studio the bodies stand in.

layout(std140) uniform View {
    mat4 clip_from_world;
    vec4 eye;      // xyz: eye in the world; w: distance to the target
    vec4 right;    // xyz: picture axis; w: 1 on light ground
    vec4 up;       // xyz: picture axis; w: pixels per mm at 1 mm from the eye
    vec4 back;     // xyz: towards the viewer; w: pixel scale
    vec4 picture;  // width, height, depth of the near plane
};

#define LIGHT_GROUND (right.w > 0.5)
#define PIXEL_SCALE back.w

// sRGB from linear by square roots, within 0.003 of IEC 61966-2-1.
// I. Taylor, "sRGB Approximations for HLSL", 2012.
vec3 display(vec3 linear) {
    vec3 s1 = sqrt(clamp(linear, 0.0, 1.0));
    vec3 s2 = sqrt(s1);
    vec3 s3 = sqrt(s2);
    return 0.662002687 * s1 + 0.684122060 * s2 - 0.323583601 * s3 - 0.0225411470 * s1 * s1;
}

vec3 linear_of(vec3 shown) {
    return shown * (shown * (shown * 0.305306011 + 0.682171111) + 0.012522878);
}

float luminance(vec3 linear) { return dot(linear, vec3(0.2126, 0.7152, 0.0722)); }

// A colour as ink on white: the same hue, dark enough to be read.
vec3 ink(vec3 linear) {
    float y = luminance(linear);
    return linear * min(1.0, 0.20 / max(y, 1e-4));
}

#ifdef FADES
uniform float u_fade;   // 0 whole .. 1 gone
uniform float u_grain;  // 1 / samples a pixel

// The coverage that is left of a body on its way out: grain by grain in a noise that is fixed to the picture, finer where
// a pixel has samples.
float what_stays(vec2 pixel) {
    float noise = fract(52.9829189 * fract(dot(pixel, vec2(0.06711056, 0.00583715))));
    float left = clamp(1.0 - u_fade + u_grain * (noise - 0.5), 0.0, 1.0);
    return u_grain < 0.9 ? left : step(0.5, left);
}
#endif

// The ground at a height of the picture, 0 bottom to 1 top, linear.
vec3 ground(float height) {
    if (LIGHT_GROUND) return mix(vec3(0.86, 0.87, 0.89), vec3(1.0), smoothstep(0.0, 0.9, height));
    return mix(vec3(0.0040, 0.0055, 0.0085), vec3(0.0120, 0.0170, 0.0260), smoothstep(0.0, 1.0, height));
}

// What a polished face reflects from direction `r` (world): a studio that turns with the viewer, a large soft
// window upper left and a narrow one at the right, over a dim gradient.
float studio(vec3 r) {
    vec3 v = vec3(dot(r, right.xyz), dot(r, up.xyz), dot(r, back.xyz));
    float room = 0.06 + 0.20 * smoothstep(-0.6, 1.0, v.y);
    vec2 window = smoothstep(vec2(0.62, 0.55), vec2(0.30, 0.25), abs(v.xy - vec2(-0.40, 0.58)));
    float strip = smoothstep(0.16, 0.05, abs(v.x - 0.72)) * smoothstep(0.75, 0.45, abs(v.y - 0.1));
    return room + 1.1 * window.x * window.y * step(-0.2, v.z) + 0.7 * strip;
}
