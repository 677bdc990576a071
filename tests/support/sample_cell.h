/* Two small cell files in which everything is known and every number can be worked out by head: the
 * bases that tests change key by key. Tests only. */
#ifndef SAMPLE_CELL_H
#define SAMPLE_CELL_H

/* No load model: four anchors at (+-400, +-300) mm in the middle of a large slab; allowed tension
 * 0.25 x 40 = 10 kN, allowed shear 0.25 x 32 = 8 kN; 5 kN or 2 kN are needed, not both at once.
 * Everything holds. */
extern const char sample_needs[];

/* The same anchors under an arm without mass at floor level in the middle of a plate of 1000 x 800
 * mm: at emergency stop it lifts 4 kN, 1 kN an anchor, and pushes 8 kN, 2 kN an anchor, with no
 * moment. */
extern const char sample_lift[];

#endif
