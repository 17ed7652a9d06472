/* stead-pack-label.c - the label of a carton, a jar, a tray or a shelf.
 *
 * The upper part runs over the whole width.  The foot has the QR code on its right
 * and the small facts on its left, with the net quantity as the last of them: it
 * belongs into the lowest third of a main panel.
 */
#include "config.h"

#include <math.h>
#include <qrencode.h>

#include "draw/stead-pack-label.h"

#define PAD 5.0
#define GAP 2.5            /* between two parts */
#define SAFE_PAD 2.5       /* inside the box of the safe handling */
#define CODE_LEAST 36.0    /* half an inch: what a phone reads well (common practice, no source) */
#define CODE_MOST 72.0
#define CODE_SHARE 0.42    /* of the label's height, between those */
#define QUIET 4            /* modules left white around a QR code: ISO/IEC 18004 */
#define SIZE_MOST 16.0
#define SIZE_STEP 0.25

/* The type of a part beside that of the others. */
static const double scales[STEAD_N_TAG_PARTS] = {
  [STEAD_TAG_NAME] = 1.5, [STEAD_TAG_PRICE] = 2.6, [STEAD_TAG_INGREDIENTS] = 1, [STEAD_TAG_CONTAINS] = 1,
  [STEAD_TAG_SAFE] = 1, [STEAD_TAG_KEEP] = 1, [STEAD_TAG_DATES] = 1, [STEAD_TAG_FARM] = 1, [STEAD_TAG_NET] = 1.1,
  [STEAD_TAG_LOT] = 1,
};

static const SteadTagPart upper[] = {
  STEAD_TAG_NAME, STEAD_TAG_PRICE, STEAD_TAG_INGREDIENTS, STEAD_TAG_CONTAINS, STEAD_TAG_SAFE
};
static const SteadTagPart lower[] = { STEAD_TAG_KEEP, STEAD_TAG_DATES, STEAD_TAG_FARM, STEAD_TAG_NET };

static gboolean
is_bold (SteadTagPart part)
{
  return part == STEAD_TAG_NAME || part == STEAD_TAG_PRICE || part == STEAD_TAG_CONTAINS || part == STEAD_TAG_NET;
}

/* --- text --------------------------------------------------------------------- */

static PangoAttrList *
make_attributes (const SteadPackLabelWords *words,
                 SteadTagPart               part)
{
  PangoAttrList *attributes = pango_attr_list_new ();

  pango_attr_list_insert (attributes, pango_attr_font_features_new (STEAD_FONT_FEATURES));
  if (part == STEAD_TAG_SAFE)
    {
      PangoAttribute *bold = pango_attr_weight_new (PANGO_WEIGHT_BOLD);

      bold->end_index = (guint) words->safe_bold;
      pango_attr_list_insert (attributes, bold);
    }
  return attributes;
}

/* Without hinting: what fits on the screen fits on paper. */
static PangoLayout *
make_text (cairo_t                   *cr,
           const SteadPackLabelWords *words,
           SteadTagPart               part,
           double                     size,
           double                     width)
{
  PangoLayout *layout = pango_cairo_create_layout (cr);
  PangoContext *context = pango_layout_get_context (layout);
  PangoFontDescription *font = pango_font_description_new ();
  cairo_font_options_t *options = cairo_font_options_create ();
  PangoAttrList *attributes = make_attributes (words, part);

  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  pango_cairo_context_set_font_options (context, options);
  pango_context_set_round_glyph_positions (context, FALSE);
  cairo_font_options_destroy (options);
  pango_font_description_set_family_static (font, "Sans");
  pango_font_description_set_absolute_size (font, size * PANGO_SCALE);
  pango_font_description_set_weight (font, is_bold (part) ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
  pango_layout_set_width (layout, (int) (width * PANGO_SCALE));
  pango_layout_set_text (layout, words->text[part], -1);
  return layout;
}

static void
measure (cairo_t                   *cr,
         const SteadPackLabelWords *words,
         SteadTagPart               part,
         double                     size,
         double                     room,
         double                    *width,
         double                    *height)
{
  PangoLayout *layout = make_text (cr, words, part, size, room);
  PangoRectangle extents;

  pango_layout_get_extents (layout, NULL, &extents);
  *width = (double) extents.width / PANGO_SCALE;
  *height = (double) extents.height / PANGO_SCALE;
  g_object_unref (layout);
}

/* Height of a small "o" in type of 1 point, bold or not. */
static double
measure_o (cairo_t  *cr,
           gboolean  bold)
{
  static const SteadPackLabelWords o = { .text = { [STEAD_TAG_NAME] = "o", [STEAD_TAG_DATES] = "o" } };
  PangoLayout *layout = make_text (cr, &o, bold ? STEAD_TAG_NAME : STEAD_TAG_DATES, 100, 1000);
  PangoRectangle ink;

  pango_layout_get_extents (layout, &ink, NULL);
  g_object_unref (layout);
  return (double) ink.height / PANGO_SCALE / 100;
}

/* --- layout ------------------------------------------------------------------- */

typedef struct
{
  cairo_t                   *cr;
  const SteadPackLabelWords *words;
  SteadPackLabelLayout      *out;
  double                     wide;    /* width of the upper part's text */
  double                     code;    /* side of the QR code; 0: none */
} Fitting;

/* Puts one part at the pen; moves the pen below it. */
static gboolean
put (Fitting      *fitting,
     SteadTagPart  part,
     double        x,
     double        room,
     double       *pen)
{
  SteadPackLabelLayout *out = fitting->out;
  double inset = part == STEAD_TAG_SAFE ? SAFE_PAD : 0;
  double width, height;

  if (fitting->words->text[part] == NULL)
    return TRUE;
  measure (fitting->cr, fitting->words, part, out->size[part], room - 2 * inset, &width, &height);
  out->box[part] = (SteadBox) { x, *pen, room, height + 2 * inset };
  *pen += height + 2 * inset + GAP;
  return width <= room - 2 * inset + 0.01;
}

/* The foot is laid from its own top; afterwards it is moved down to the label's foot. */
static gboolean
put_foot (Fitting *fitting,
          double   top)
{
  SteadPackLabelLayout *out = fitting->out;
  double room = fitting->code > 0 ? fitting->wide - fitting->code - GAP : fitting->wide;
  double left = top, right = top, bottom = out->height - PAD, shift;
  gboolean fits = TRUE;

  for (gsize i = 0; i < G_N_ELEMENTS (lower); i++)
    fits &= put (fitting, lower[i], PAD, room, &left);
  if (fitting->code > 0)
    {
      double x = out->width - PAD - fitting->code;

      out->code = (SteadBox) { x, right, fitting->code, fitting->code };
      right += fitting->code;
      fits &= put (fitting, STEAD_TAG_LOT, x, fitting->code, &right);
    }
  shift = bottom - (MAX (left, right) - GAP);
  if (shift < -0.01)
    return FALSE;
  for (gsize i = 0; i < G_N_ELEMENTS (lower); i++)
    out->box[lower[i]].y += bottom - (left - GAP);
  out->code.y += bottom - (right - GAP);
  out->box[STEAD_TAG_LOT].y += bottom - (right - GAP);
  return fits;
}

static gboolean
try_size (Fitting                   *fitting,
          const SteadPackLabelRules *rules,
          double                     size)
{
  SteadPackLabelLayout *out = fitting->out;
  double plain = measure_o (fitting->cr, FALSE), bold = measure_o (fitting->cr, TRUE);
  double pen = PAD;
  gboolean fits = TRUE;

  for (int i = 0; i < STEAD_N_TAG_PARTS; i++)
    {
      double o = is_bold (i) ? bold : plain;
      double least = i == STEAD_TAG_NET ? rules->net : rules->others;

      out->size[i] = fitting->words->text[i] == NULL ? 0 : MAX (size * scales[i], least / o);
      out->letter[i] = out->size[i] * o;
      out->box[i] = (SteadBox) { 0 };
    }
  out->code = (SteadBox) { 0 };
  for (gsize i = 0; i < G_N_ELEMENTS (upper); i++)
    fits &= put (fitting, upper[i], PAD, fitting->wide, &pen);
  return fits && put_foot (fitting, pen);
}

gboolean
stead_pack_label_layout (cairo_t                   *cr,
                         const SteadPackLabelWords *words,
                         const SteadPackLabelRules *rules,
                         double                     width,
                         double                     height,
                         SteadPackLabelLayout      *out)
{
  Fitting fitting = { cr, words, out, width - 2 * PAD, 0 };
  double least;

  g_return_val_if_fail (words != NULL && rules != NULL && out != NULL && width > 4 * PAD && height > 4 * PAD, FALSE);
  *out = (SteadPackLabelLayout) { .width = width, .height = height };
  if (words->text[STEAD_TAG_LOT] != NULL)
    fitting.code = CLAMP (height * CODE_SHARE, CODE_LEAST, CODE_MOST);
  least = rules->others / measure_o (cr, FALSE);
  for (double size = MAX (SIZE_MOST, least); !out->fits; size = MAX (size - SIZE_STEP, least))
    {
      out->fits = try_size (&fitting, rules, size);
      if (size <= least)
        break;
    }
  return out->fits;
}

/* --- painting ----------------------------------------------------------------- */

static void
paint_code (cairo_t        *cr,
            const char     *text,
            const SteadBox *box)
{
  QRcode *code = QRcode_encodeString8bit (text, 0, QR_ECLEVEL_M);
  double module;

  if (code == NULL)   /* out of memory, or a text longer than any lot's code */
    return;
  module = box->width / (code->width + 2 * QUIET);
  cairo_save (cr);
  cairo_set_antialias (cr, CAIRO_ANTIALIAS_NONE);
  for (int row = 0; row < code->width; row++)
    for (int column = 0; column < code->width; column++)
      if (code->data[row * code->width + column] & 1)
        cairo_rectangle (cr, box->x + (column + QUIET) * module, box->y + (row + QUIET) * module, module, module);
  cairo_fill (cr);
  cairo_restore (cr);
  QRcode_free (code);
}

static void
paint_part (cairo_t                    *cr,
            const SteadPackLabelWords  *words,
            const SteadPackLabelLayout *layout,
            SteadTagPart                part)
{
  const SteadBox *box = &layout->box[part];
  double inset = part == STEAD_TAG_SAFE ? SAFE_PAD : 0;
  PangoLayout *text = make_text (cr, words, part, layout->size[part], box->width - 2 * inset);

  if (part == STEAD_TAG_LOT)
    pango_layout_set_alignment (text, PANGO_ALIGN_CENTER);
  if (part == STEAD_TAG_SAFE)
    {
      cairo_set_line_width (cr, 0.5);
      cairo_rectangle (cr, box->x + 0.25, box->y + 0.25, box->width - 0.5, box->height - 0.5);
      cairo_stroke (cr);
    }
  cairo_move_to (cr, box->x + inset, box->y + inset);
  stead_text_show_layout (cr, text);
  g_object_unref (text);
}

void
stead_pack_label_paint (cairo_t                    *cr,
                        const SteadPackLabelWords  *words,
                        const SteadPackLabelLayout *layout)
{
  g_return_if_fail (cr != NULL && words != NULL && layout != NULL && layout->fits);
  stead_palette_set_source (cr, STEAD_SCHEME_PRINT, STEAD_ROLE_INK, 1);
  for (int part = 0; part < STEAD_N_TAG_PARTS; part++)
    if (words->text[part] != NULL)
      paint_part (cr, words, layout, part);
  if (layout->code.width > 0)
    paint_code (cr, words->text[STEAD_TAG_LOT], &layout->code);
}
