// Bodies, or parts of bodies, that no cut runs through. A back face is seen only through a cut nearby.
in vec3 v_colour;
centroid in float v_facing;
out vec4 o_colour;

uniform vec3 u_rim;  // display colour of the cut

void main() { o_colour = vec4(v_facing < 0.0 ? u_rim : v_colour, 1.0); }
