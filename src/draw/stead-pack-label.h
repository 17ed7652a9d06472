/* stead-pack-label.h - the label of a carton, a jar, a tray or a shelf.
 *
 * Letters are never smaller than the rules ask: where the words do not fit, the
 * layout says so, and a larger label is needed.  Black on white, whatever the
 * scheme: it is printed.
 */
#pragma once

#include "draw/stead-draw.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_TAG_NAME,         /* what it is */
  STEAD_TAG_PRICE,        /* large: a shelf */
  STEAD_TAG_INGREDIENTS,
  STEAD_TAG_CONTAINS,     /* allergens, bold */
  STEAD_TAG_SAFE,         /* safe handling, in a hairline box */
  STEAD_TAG_KEEP,         /* "Keep refrigerated." */
  STEAD_TAG_DATES,
  STEAD_TAG_FARM,         /* name and place of business */
  STEAD_TAG_NET,          /* net quantity, at the foot */
  STEAD_TAG_LOT,          /* the lot's code, below its QR code */
} SteadTagPart;

#define STEAD_N_TAG_PARTS (STEAD_TAG_LOT + 1)

typedef struct
{
  const char *text[STEAD_N_TAG_PARTS];   /* each (nullable): left out */
  gsize       safe_bold;                 /* bytes, whole characters, at the start of the safe handling that are bold */
} SteadPackLabelWords;

/* Least heights of letters, in points: of a small "o", as the rules measure. */
typedef struct
{
  double net;      /* of the net quantity */
  double others;   /* of all the rest */
} SteadPackLabelRules;

typedef struct
{
  double   width, height;              /* of the label */
  gboolean fits;                       /* FALSE: the words need a larger label; nothing is to be painted */
  double   size[STEAD_N_TAG_PARTS];    /* of the type, points; 0: part left out */
  double   letter[STEAD_N_TAG_PARTS];  /* height of a small "o" in it, points */
  SteadBox box[STEAD_N_TAG_PARTS];     /* where each part lies */
  SteadBox code;                       /* the QR code with its quiet zone; no width: none */
} SteadPackLabelLayout;

/**
 * stead_pack_label_layout:
 * @cr: for measuring text
 * @words: what stands on it
 * @rules: least sizes
 * @width: of the label, points
 * @height: of the label, points
 * @out: (out): sizes and places; the largest type that fits
 *
 * Returns: whether it fits
 */
gboolean stead_pack_label_layout (cairo_t                   *cr,
                                  const SteadPackLabelWords *words,
                                  const SteadPackLabelRules *rules,
                                  double                     width,
                                  double                     height,
                                  SteadPackLabelLayout      *out);

/* Paints a layout that fits, from 0, 0. */
void stead_pack_label_paint (cairo_t                    *cr,
                             const SteadPackLabelWords  *words,
                             const SteadPackLabelLayout *layout);

G_END_DECLS
