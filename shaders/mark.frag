// Cross, dot, ring or diamond by signed distance, with a thin dark seam so that it reads on bright light.
flat in vec3 v_colour;
flat in vec2 v_style;
in vec2 v_at;
out vec4 o_colour;

uniform float u_alpha;

float distance_to_shape(vec2 p, float size, float stroke) {
    int shape = int(v_style.y + 0.5);
    if (shape == 0) {  // cross: two strokes at 45 degrees
        vec2 q = abs(vec2(p.x + p.y, p.x - p.y)) * 0.70710678;
        float reach = size * 1.15;
        vec2 a = vec2(max(q.x - reach, 0.0), q.y);
        vec2 b = vec2(q.x, max(q.y - reach, 0.0));
        return min(length(a), length(b)) - stroke;
    }
    if (shape == 1) return length(p) - size;
    if (shape == 2) return abs(length(p) - size + stroke) - stroke;
    return (abs(p.x) + abs(p.y) - size) * 0.70710678;
}

void main() {
    float stroke = 0.85 * PIXEL_SCALE;
    float d = distance_to_shape(v_at, v_style.x, stroke);
    float shape = clamp(0.5 - d, 0.0, 1.0);
    float seam = LIGHT_GROUND ? 0.0 : 0.40 * clamp(0.5 - d + 1.0 * PIXEL_SCALE, 0.0, 1.0);
    float alpha = shape + (1.0 - shape) * seam;
    if (alpha <= 0.0) discard;
    o_colour = vec4(v_colour * (shape / alpha), alpha * u_alpha);
}
