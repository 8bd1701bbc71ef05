flat in vec3 v_colour;
flat in vec3 v_style;
in vec2 v_at;
out vec4 o_colour;

uniform float u_alpha;

void main() {
    float half_width = v_style.x;
    // Round ends: distance to the stretch from 0 to its length.
    float past = max(max(-v_at.x, v_at.x - v_style.y), 0.0);
    float apart = length(vec2(past, v_at.y));
    float coverage = clamp(half_width - apart + 0.5, 0.0, 1.0) * min(1.0, 2.0 * half_width);
    if (v_style.z > 0.5) {
        float period = 9.0 * PIXEL_SCALE;
        float from_dash = abs(mod(v_at.x, period) - 0.5 * period) - 0.30 * period;
        coverage *= clamp(0.5 - from_dash, 0.0, 1.0);
    }
    if (coverage <= 0.0) discard;
    o_colour = vec4(v_colour, coverage * u_alpha);
}
