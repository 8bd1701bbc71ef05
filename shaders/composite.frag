// Ground and bodies, with the sum of light screened over them.
in vec2 v_uv;
out vec4 o_colour;

uniform sampler2D u_bodies;
uniform sampler2D u_light;
uniform sampler2D u_halo;
uniform float u_halo_share;
uniform vec3 u_ground_low;   // display colours
uniform vec3 u_ground_high;

// Rises straight at first and bends towards 1, keeping the hue; the very brightest turns white, as light does.
vec3 tone(vec3 light) {
    float m = max(light.r, max(light.g, light.b)) + 1e-5;
    float white = m * m / (m * m + 60.0);
    return mix(light, vec3(m), white) * ((1.0 - exp2(-1.6 * m)) / m);
}

// Two thirds of a grey step of noise, fixed to the picture: dark gradients show no bands.
float dither() {
    vec2 p = gl_FragCoord.xy;
    return (fract(52.9829189 * fract(dot(p, vec2(0.06711056, 0.00583715)))) - 0.5) * (0.66 / 255.0);
}

// The two ends of the ground are encoded first: no root is taken per pixel for what hardly changes.
vec3 ground_at(float height) { return mix(u_ground_low, u_ground_high, height * height * (3.0 - 2.0 * height)); }

void main() {
    ivec2 pixel = ivec2(gl_FragCoord.xy);
    vec4 body = texelFetch(u_bodies, pixel, 0);
    vec3 light = texelFetch(u_light, pixel, 0).rgb;
#ifdef WITH_HALO
    light += u_halo_share * texture(u_halo, v_uv).rgb;
#else
    light *= 1.0 + 0.6 * u_halo_share;  // about as bright as with its halo
#endif
    vec3 shown = body.rgb + (1.0 - body.a) * ground_at(v_uv.y);
    vec3 base = linear_of(shown);
#ifdef LIGHT_IS_INK
    float m = max(light.r, max(light.g, light.b)) + 1e-5;
    vec3 colour = base * exp(-light * (1.8 * (1.0 - exp(-m / 1.8)) / m));  // never black: the hue stays
#else
    vec3 colour = base + (1.0 - base) * tone(light);
#endif
    o_colour = vec4(display(colour) + dither(), 1.0);
}
