/* stead-sign-paper.c - price signs in large type, two a page: cut along the line. */
#include "config.h"

#include "answer/stead-sale-answer.h"
#include "answer/stead-subject.h"
#include "core/stead-label-sheet.h"
#include "core/stead-money.h"
#include "paper/stead-paper-private.h"

#include <glib/gi18n-lib.h>


#define SIGNS 2
#define MARGIN 36.0

/* Largest type; a name that is too long for its line gives way. */
#define NAME_SIZE 64.0
#define PRICE_SIZE 132.0
#define UNIT_SIZE 34.0
#define FARM_SIZE 16.0

typedef struct
{
  char   *farm;
  GPtrArray *names, *prices, *units;   /* of char * */
  double  width, height;
} Signs;

static void
signs_free (gpointer data)
{
  Signs *signs = data;

  g_free (signs->farm);
  g_ptr_array_unref (signs->names);
  g_ptr_array_unref (signs->prices);
  g_ptr_array_unref (signs->units);
  g_free (signs);
}

static void
paint_line (cairo_t    *cr,
            const char *text,
            double      size,
            double      y,
            double      width)
{
  SteadDrawStyle style = { .scheme = STEAD_SCHEME_PRINT, .font_size = size };
  double needs, height;

  stead_text_measure (cr, &style, text, 1, TRUE, &needs, &height);
  if (needs > width)
    style.font_size *= width / needs;
  stead_text_paint (cr, &style, STEAD_ROLE_INK, text, 1, TRUE, STEAD_ALIGN_CENTER, MARGIN + width / 2, y);
}

static void
paint_sign (cairo_t     *cr,
            const Signs *signs,
            guint        at,
            double       top)
{
  double half = signs->height / SIGNS, width = signs->width - 2 * MARGIN;

  paint_line (cr, signs->names->pdata[at], NAME_SIZE, top + 0.20 * half, width);
  paint_line (cr, signs->prices->pdata[at], PRICE_SIZE, top + 0.52 * half, width);
  paint_line (cr, signs->units->pdata[at], UNIT_SIZE, top + 0.78 * half, width);
  paint_line (cr, signs->farm, FARM_SIZE, top + 0.91 * half, width);
}

static void
paint_page (cairo_t  *cr,
            int       page,
            gpointer  data)
{
  const Signs *signs = data;

  for (guint i = 0; i < SIGNS; i++)
    if ((guint) page * SIGNS + i < signs->names->len)
      paint_sign (cr, signs, (guint) page * SIGNS + i, i * signs->height / SIGNS);
  cairo_save (cr);
  cairo_set_dash (cr, (double[]) { 4, 4 }, 2, 0);
  cairo_set_line_width (cr, 0.6);
  cairo_move_to (cr, 0, signs->height / SIGNS);
  cairo_line_to (cr, signs->width, signs->height / SIGNS);
  cairo_stroke (cr);
  cairo_restore (cr);
}

static Signs *
signs_new (const SteadFarm *farm,
           const SteadSale *sale,
           gboolean         metric)
{
  Signs *signs = g_new0 (Signs, 1);

  signs->farm = g_strdup (farm->name);
  signs->names = g_ptr_array_new_with_free_func (g_free);
  signs->prices = g_ptr_array_new_with_free_func (g_free);
  signs->units = g_ptr_array_new_with_free_func (g_free);
  signs->width = metric ? STEAD_A4_WIDTH : STEAD_LETTER_WIDTH;
  signs->height = metric ? STEAD_A4_HEIGHT : STEAD_LETTER_HEIGHT;
  for (guint i = 0; i < sale->goods->len; i++)
    {
      const SteadSaleGood *good = sale->goods->pdata[i];

      g_ptr_array_add (signs->names, g_strdup (good->name));
      g_ptr_array_add (signs->prices, stead_money_format (good->price_cents, farm->currency));
      g_ptr_array_add (signs->units, g_strdup (stead_words_per_unit (good->pack)));
    }
  return signs;
}

SteadPages *
stead_sign_paper_new (SteadStore               *store,
                      const char               *of,
                      const SteadPaperOptions  *options,
                      GError                  **error)
{
  g_autoptr(SteadImprint) imprint = NULL;
  g_autoptr(SteadFarm) farm = NULL;
  g_autoptr(SteadSale) sale = NULL;
  g_autofree char *title = NULL;
  SteadPages *pages;
  Signs *signs;
  gint64 id;

  if (!stead_subject_sale (store, of, &id, error))
    return NULL;
  imprint = stead_imprint_new (store, error);
  farm = imprint != NULL ? stead_farm_repo_get (store, error) : NULL;
  sale = farm != NULL ? stead_sale_repo_get (store, id, error) : NULL;
  if (sale == NULL)
    return NULL;
  signs = signs_new (farm, sale, imprint->metric);
  /* Translators: title of a document; a sale. */
  title = g_strdup_printf (_("Price signs: %s"), sale->name);
  pages = stead_pages_new (imprint, title, NULL);
  stead_pages_set_sheet (pages, signs->width, signs->height, (int) MAX (1, (signs->names->len + SIGNS - 1) / SIGNS),
                         paint_page, signs, signs_free);
  return pages;
}
