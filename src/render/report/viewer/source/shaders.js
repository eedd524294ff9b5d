const cut = `
precision highp float;
uniform vec2 cut;
uniform vec3 colour;
uniform float alpha;
varying float station;
`;

const dropWhatIsCut = 'if (station < cut.x || station > cut.y) discard;';

export const linesShader = {
  vertex: `
attribute vec3 position;
uniform mat4 viewMatrix;
uniform mat4 projectionMatrix;
varying float station;
void main() {
  station = position.x;
  gl_Position = projectionMatrix * viewMatrix * vec4(position, 1.0);
}`,
  fragment: `${cut}
void main() {
  ${dropWhatIsCut}
  gl_FragColor = vec4(colour, alpha);
}`,
};

export const flatShader = linesShader;

/** Radii of less than `least` pixels are drawn as that. */
export const sweptShader = {
  vertex: `
attribute vec3 position;
attribute vec3 offset;
attribute float radius;
uniform mat4 viewMatrix;
uniform mat4 projectionMatrix;
uniform float pixel;
uniform float least;
varying float station;
varying vec3 outward;
void main() {
  float depth = -(viewMatrix * vec4(position, 1.0)).z;
  float drawn = max(radius, least * pixel * max(depth, 0.0));
  station = position.x;
  outward = offset;
  gl_Position = projectionMatrix * viewMatrix * vec4(position + offset * drawn, 1.0);
}`,
  fragment: `${cut}
uniform vec3 light;
varying vec3 outward;
void main() {
  ${dropWhatIsCut}
  float lit = 0.72 + 0.28 * abs(dot(normalize(outward), light));
  gl_FragColor = vec4(colour * lit, alpha);
}`,
};
