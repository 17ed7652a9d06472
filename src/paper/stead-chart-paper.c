/* stead-chart-paper.c - the break-even chart: on a page, as PNG, as SVG. */
#include "config.h"

#include "paper/stead-output.h"
#include "paper/stead-paper-error.h"
#include "paper/stead-paper-private.h"

#include <cairo-svg.h>
#include <glib/gi18n-lib.h>
#include <string.h>

#define PICTURE_WIDTH 960.0
#define PICTURE_HEIGHT 540.0
#define PICTURE_MAX 8000.0
#define PICTURE_MIN 160.0
#define PICTURE_PAD 16.0
#define PRINT_TEXT 8.0
#define PAGE_CHART_HEIGHT 460.0

SteadCvpFigure *
stead_cvp_figure_new (const SteadPriceAnswer *answer)
{
  SteadCvpFigure *self = g_new0 (SteadCvpFigure, 1);

  self->cvp = answer->cvp;
  self->labels = stead_cvp_labels_new (answer);
  self->currency = g_strdup (answer->cost->farm->currency);
  return self;
}

void
stead_cvp_figure_free (gpointer data)
{
  SteadCvpFigure *self = data;

  stead_cvp_labels_free (self->labels);
  g_free (self->currency);
  g_free (self);
}

void
stead_cvp_figure_paint (cairo_t              *cr,
                        SteadScheme           scheme,
                        double                font_size,
                        double                width,
                        double                height,
                        const SteadCvpFigure *figure)
{
  const SteadCvpLabels *labels = figure->labels;
  SteadCvpWords words = {
    .axis = labels->axis, .even = labels->even, .lasting = labels->lasting, .plan = labels->plan,
    .plan_gap = labels->plan_gap, .money_in = labels->money_in, .all_costs = labels->all_costs,
    .fixed_costs = labels->fixed_costs,
  };
  SteadDrawStyle style = { scheme, font_size, NULL, figure->currency };
  double max_units, max_cents;
  SteadCvpLayout layout;

  stead_cvp_chart_range (&figure->cvp, &max_units, &max_cents);
  stead_cvp_chart_layout (cr, &figure->cvp, &words, &style, max_units, max_cents, width, height, &layout);
  stead_cvp_chart_paint (cr, &figure->cvp, &words, &style, &layout);
}

void
stead_cvp_figure_print (cairo_t  *cr,
                        double    width,
                        double    height,
                        gpointer  data)
{
  stead_cvp_figure_paint (cr, STEAD_SCHEME_PRINT, PRINT_TEXT, width, height, data);
}

SteadPages *
stead_chart_paper_new (SteadStore               *store,
                       const char               *of,
                       const SteadPaperOptions  *options,
                       GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadPriceAnswer) answer = imprint == NULL ? NULL : stead_paper_read_price (store, of, options, error);
  g_autofree char *title = NULL;
  g_autofree char *period = NULL;
  SteadPages *pages;

  if (answer == NULL)
    return NULL;
  /* Translators: title of a page with the break-even chart; the product's name. */
  title = g_strdup_printf (_("%s: how many to sell"), answer->cost->product->name);
  period = stead_paper_period (answer->cost);
  pages = stead_pages_new (imprint, title, period);
  stead_pages_add_title (pages, title);
  stead_pages_add_lead (pages, answer->sentence);
  if (answer->advice != NULL)
    stead_pages_add_text (pages, answer->advice);
  if (answer->cost->caution != NULL)
    stead_pages_add_caution (pages, answer->cost->caution);
  stead_pages_add_figure (pages, PAGE_CHART_HEIGHT, stead_cvp_figure_print, stead_cvp_figure_new (answer), stead_cvp_figure_free);
  stead_pages_settle (pages);
  return pages;
}

/* --- as a picture ----------------------------------------------------------- */

static void
paint_picture (cairo_surface_t      *surface,
               const SteadCvpFigure *figure,
               double                width,
               double                height)
{
  cairo_t *cr = cairo_create (surface);

  stead_palette_set_source (cr, STEAD_SCHEME_LIGHT, STEAD_ROLE_CARD, 1);
  cairo_paint (cr);
  cairo_translate (cr, PICTURE_PAD, PICTURE_PAD);
  /* The picture is looked at as large as it is: its text grows with it. */
  stead_cvp_figure_paint (cr, STEAD_SCHEME_LIGHT, MAX (12, width / 64), width - 2 * PICTURE_PAD,
                          height - 2 * PICTURE_PAD, figure);
  cairo_destroy (cr);
}

static GBytes *
make_png (const SteadCvpFigure *figure,
          double                width,
          double                height)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) width, (int) height);
  GByteArray *out = g_byte_array_new ();

  paint_picture (surface, figure, width, height);
  cairo_surface_write_to_png_stream (surface, stead_output_collect, out);
  cairo_surface_destroy (surface);
  return g_byte_array_free_to_bytes (out);
}

/* Numbers a surface by the order in which it comes. */
static gboolean
renumber (const GMatchInfo *match,
          GString          *out,
          gpointer          data)
{
  g_autofree char *before = g_match_info_fetch (match, 1);
  char *number = g_match_info_fetch (match, 2);
  GPtrArray *seen = data;
  guint i = 0;

  while (i < seen->len && !g_str_equal (seen->pdata[i], number))
    i++;
  if (i == seen->len)
    g_ptr_array_add (seen, number);
  else
    g_free (number);
  g_string_append_printf (out, "%ssurface%u", before, i + 1);
  return FALSE;
}

/* cairo counts surfaces over the whole life of the process; counted anew, the same
 * chart gives the same file.  Title and sentence are what a screen reader says in
 * place of the picture. */
static GBytes *
finish_svg (GByteArray *drawn,
            const char *title,
            const char *sentence)
{
  g_autoptr(GRegex) counted = g_regex_new ("(id=\"|#)surface(\\d+)", 0, 0, NULL);
  g_autoptr(GPtrArray) seen = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *raw = g_strndup ((const char *) drawn->data, drawn->len);
  g_autofree char *svg = g_regex_replace_eval (counted, raw, -1, 0, 0, renumber, seen, NULL);
  g_autofree char *escaped_title = g_markup_escape_text (title, -1);
  g_autofree char *escaped_sentence = g_markup_escape_text (sentence, -1);
  const char *start = strstr (svg, "<svg");
  const char *body = start == NULL ? NULL : strchr (start, '>');
  GString *out;

  g_return_val_if_fail (body != NULL, NULL);
  out = g_string_new_len (svg, body - svg);
  g_string_append_printf (out, " xml:lang=\"%s\" role=\"img\">\n<title>%s</title>\n<desc>%s</desc>",
                          stead_imprint_language (), escaped_title, escaped_sentence);
  g_string_append (out, body + 1);
  return g_string_free_to_bytes (out);
}

static GBytes *
make_svg (const SteadCvpFigure *figure,
          double                width,
          double                height,
          const char           *title,
          const char           *sentence)
{
  g_autoptr(GByteArray) drawn = g_byte_array_new ();
  cairo_surface_t *surface = cairo_svg_surface_create_for_stream (stead_output_collect, drawn, width, height);

  cairo_svg_surface_set_document_unit (surface, CAIRO_SVG_UNIT_PX);
  paint_picture (surface, figure, width, height);
  cairo_surface_finish (surface);
  cairo_surface_destroy (surface);
  return finish_svg (drawn, title, sentence);
}

GBytes *
stead_chart_picture (SteadStore               *store,
                     const char               *of,
                     const SteadPaperOptions  *options,
                     SteadFormat               format,
                     GError                  **error)
{
  g_autoptr(SteadPriceAnswer) answer = stead_paper_read_price (store, of, options, error);
  double width = options != NULL && options->width > 0 ? options->width : PICTURE_WIDTH;
  double height = options != NULL && options->height > 0 ? options->height : PICTURE_HEIGHT;
  g_autofree char *title = NULL;
  g_autofree char *sentence = NULL;
  SteadCvpFigure *figure;
  GBytes *picture;

  if (answer == NULL)
    return NULL;
  width = CLAMP (width, PICTURE_MIN, PICTURE_MAX);
  height = CLAMP (height, PICTURE_MIN, PICTURE_MAX);
  title = g_strdup_printf (_("%s: how many to sell"), answer->cost->product->name);
  sentence = stead_words_plain (answer->sentence);
  figure = stead_cvp_figure_new (answer);
  picture = format == STEAD_FORMAT_PNG ? make_png (figure, width, height)
                                       : make_svg (figure, width, height, title, sentence);
  stead_cvp_figure_free (figure);
  return picture;
}
