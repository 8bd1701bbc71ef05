// Ground and bodies, with the sum of light screened over them.
in vec2 v_uv;
out vec4 o_colour;

uniform sampler2D u_bodies;
uniform sampler2D u_light;
uniform sampler2D u_bloom;
uniform float u_bloom_share;
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

// The share of paper's white that light read as ink leaves; never black: the hue stays.
vec3 as_ink(vec3 light) {
    float m = max(light.r, max(light.g, light.b)) + 1e-5;
    return exp(-light * (1.8 * (1.0 - exp(-m / 1.8)) / m));
}

#ifdef NO_GROUND
float largest(vec3 v) { return max(v.r, max(v.g, v.b)); }
float smallest(vec3 v) { return min(v.r, min(v.g, v.b)); }

// Colour times alpha, in display values, as pictures are laid over each other. Light laid over black, and ink laid
// over white, is then exactly what it is on that ground; one alpha for three colours cannot be exact on all others.
vec4 without_ground(vec4 body, vec3 light) {
#ifdef LIGHT_IS_INK
    vec3 left = as_ink(light);
    vec3 over_white = display(linear_of(body.rgb + (1.0 - body.a)) * left);
    float through = min((1.0 - body.a) * smallest(display(left)), smallest(over_white));
    return vec4(over_white - through, 1.0 - through);
#else
    vec3 shone = tone(light);
    vec3 base = linear_of(body.rgb);
    vec3 over_black = display(base + (1.0 - base) * shone);
    float through = (1.0 - body.a) * (1.0 - largest(display(shone)));
    return vec4(over_black, max(1.0 - through, largest(over_black)));
#endif
}
#endif

void main() {
    ivec2 pixel = ivec2(gl_FragCoord.xy);
    vec4 body = texelFetch(u_bodies, pixel, 0);
    vec3 light = texelFetch(u_light, pixel, 0).rgb;
#ifdef WITH_BLOOM
    light += u_bloom_share * texture(u_bloom, v_uv).rgb;
#else
    light *= 1.0 + 0.6 * u_bloom_share;  // about as bright as with its bloom
#endif
#ifdef NO_GROUND
    o_colour = without_ground(body, light);
#else
    vec3 shown = body.rgb + (1.0 - body.a) * ground_at(v_uv.y);
    vec3 base = linear_of(shown);
#ifdef LIGHT_IS_INK
    vec3 colour = base * as_ink(light);
#else
    vec3 colour = base + (1.0 - base) * tone(light);
#endif
    o_colour = vec4(display(colour) + dither(), 1.0);
#endif
}
