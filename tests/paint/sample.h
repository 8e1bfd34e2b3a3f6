/* sample.h - walls to draw, made in code */
#pragma once

#include "bond/layout.h"
#include "model/project.h"
#include "paint/elevation.h"

/* A project of one wall and that wall laid. */
typedef struct
{
  Project *project;
  Layout *layout;
} Sample;

typedef enum
{
  SAMPLE_STREET, /* 8.4 m, two windows, a door, a return at the left, steel, 25 mm bed */
  SAMPLE_BARE,   /* 6 m, no openings */
  SAMPLE_SMALL,  /* 1.9 m with a hole that notches pieces, ripped at the top */
  SAMPLE_LONG,   /* 20 m, seven openings, two of them one above the other, two returns */
  SAMPLE_NARROW, /* a pier of 95 mm, which breaks rules */
  SAMPLE_THICK,  /* joints of 10 mm */
  SAMPLE_GABLE,  /* 8 m up to a ridge of 5 m off its middle, a cap, a footing of two steps */
  N_SAMPLES
} SampleKind;

extern const char *const sample_words[N_SAMPLES];

Sample sample_new (SampleKind kind);
/* A wall made up from the numbers of `random`: 1 to 12 m, 0 to 5 openings that may stand anywhere
 * where they break no rule of the model, joints of 0 to 12 mm, returns and steel or none. */
Sample sample_new_random (GRand *random);
/* The sample with that wall, which it takes, laid anew. */
void sample_take (Sample *sample, Wall *wall);
/* One that is laid up to that course. */
Sample sample_begun (SampleKind kind, gint32 courses);
void sample_clear (Sample *sample);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Sample, sample_clear)

const Wall *sample_wall (const Sample *sample);
ElevationInput sample_input (const Sample *sample);
