/* stead-pages.c - a document as a flow of blocks. */
#include "config.h"

#include "paper/stead-pages-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define LETTER_WIDTH 612.0     /* 8 1/2 by 11 inches */
#define LETTER_HEIGHT 792.0
#define A4_WIDTH 595.276       /* 210 by 297 mm, ISO 216 */
#define A4_HEIGHT 841.89

static void
row_free (gpointer data)
{
  SteadPagesRow *row = data;

  for (int i = 0; i < STEAD_PAGES_MAX_COLUMNS; i++)
    {
      g_free (row->cells[i]);
      g_free (row->boxes[i]);
    }
  g_free (row);
}

static void
block_free (gpointer data)
{
  SteadBlock *block = data;

  if (block->destroy != NULL)
    block->destroy (block->data);
  for (int i = 0; i < STEAD_PAGES_MAX_COLUMNS; i++)
    g_free (block->titles[i]);
  g_clear_pointer (&block->rows, g_ptr_array_unref);
  g_free (block->markup);
  g_free (block);
}

static char *
origin_text (const SteadImprint *imprint,
             const char         *period)
{
  g_autofree char *change = g_strdup_printf ("%" G_GINT64_FORMAT, imprint->change_no);

  if (period == NULL)
    /* Translators: foot of a page; the number counts the changes of the farm file. */
    return g_strdup_printf (_("Farm file at change %s"), change);
  /* Translators: foot of a page; the days that the figures are of, then the count of changes. */
  return g_strdup_printf (_("Period: %s. Farm file at change %s"), period, change);
}

SteadPages *
stead_pages_new (const SteadImprint *imprint,
                 const char         *title,
                 const char         *period)
{
  SteadPages *self = g_new0 (SteadPages, 1);
  g_autofree char *today = stead_day_format (imprint->today, STEAD_DAY_STYLE_MEDIUM);

  self->title = g_strdup (title);
  self->language = stead_imprint_language ();
  self->farm_name = g_strdup (imprint->farm_name);
  /* Translators: head of a page; the day on which it was made. */
  self->made = g_strdup_printf (_("Made on %s"), today);
  self->origin = origin_text (imprint, period);
  self->day = imprint->today;
  self->width = imprint->metric ? A4_WIDTH : LETTER_WIDTH;
  self->height = imprint->metric ? A4_HEIGHT : LETTER_HEIGHT;
  self->blocks = g_ptr_array_new_with_free_func (block_free);
  self->placed = g_array_new (FALSE, FALSE, sizeof (SteadPlaced));
  return self;
}

void
stead_pages_free (SteadPages *self)
{
  if (self == NULL)
    return;
  if (self->sheet_destroy != NULL)
    self->sheet_destroy (self->sheet_data);
  g_array_unref (self->placed);
  g_ptr_array_unref (self->blocks);
  g_free (self->title);
  g_free (self->farm_name);
  g_free (self->made);
  g_free (self->origin);
  g_free (self);
}

void
stead_pages_set_sheet (SteadPages      *self,
                       double           width,
                       double           height,
                       int              n_pages,
                       SteadSheetPaint  paint,
                       gpointer         data,
                       GDestroyNotify   destroy)
{
  g_return_if_fail (self->blocks->len == 0 && self->paint_sheet == NULL && n_pages > 0 && paint != NULL);
  self->width = width;
  self->height = height;
  self->n_pages = n_pages;
  self->paint_sheet = paint;
  self->sheet_data = data;
  self->sheet_destroy = destroy;
}

double
stead_pages_content_width (const SteadPages *self)
{
  return self->width - 2 * STEAD_PAGES_MARGIN;
}

static SteadBlock *
add_block (SteadPages     *self,
           SteadBlockKind  kind,
           double          before)
{
  SteadBlock *block = g_new0 (SteadBlock, 1);

  block->kind = kind;
  block->before = before;
  g_ptr_array_add (self->blocks, block);
  return block;
}

/* @plain: the text is no markup */
static SteadBlock *
add_text (SteadPages *self,
          SteadType   type,
          const char *tag,
          const char *text,
          gboolean    plain,
          double      before)
{
  SteadBlock *block = add_block (self, STEAD_PAGE_BLOCK_TEXT, before);

  block->type = type;
  block->tag = tag;
  block->markup = plain ? g_markup_escape_text (text, -1) : g_strdup (text);
  return block;
}

void
stead_pages_add_title (SteadPages *self,
                       const char *text)
{
  add_text (self, STEAD_TYPE_TITLE, "H1", text, TRUE, 0)->keep = TRUE;
}

void
stead_pages_add_lead (SteadPages *self,
                      const char *markup)
{
  add_text (self, STEAD_TYPE_LEAD, "P", markup, FALSE, 7);
}

void
stead_pages_add_heading (SteadPages *self,
                         const char *text)
{
  add_text (self, STEAD_TYPE_HEADING, "H2", text, TRUE, 20)->keep = TRUE;
}

void
stead_pages_add_subheading (SteadPages *self,
                            const char *text)
{
  add_text (self, STEAD_TYPE_STRONG, "H3", text, TRUE, 12)->keep = TRUE;
}

void
stead_pages_add_text (SteadPages *self,
                      const char *markup)
{
  add_text (self, STEAD_TYPE_BODY, "P", markup, FALSE, 7);
}

void
stead_pages_add_note (SteadPages *self,
                      const char *text)
{
  add_text (self, STEAD_TYPE_SMALL, "P", text, TRUE, 4);
}

void
stead_pages_add_caution (SteadPages *self,
                         const char *text)
{
  g_autofree char *escaped = g_markup_escape_text (text, -1);
  /* Translators: before a caution on paper, in bold. */
  g_autofree char *markup = g_strdup_printf ("<b>%s</b> %s", _("Look first:"), escaped);

  add_text (self, STEAD_TYPE_CAUTION, "P", markup, FALSE, 12);
}

void
stead_pages_add_why (SteadPages     *self,
                     const SteadWhy *why)
{
  g_auto(GStrv) lines = g_strsplit (why->worked, "\n", -1);
  g_autofree char *source = NULL;

  add_text (self, STEAD_TYPE_STRONG, "P", why->title, TRUE, 11)->keep = TRUE;
  add_text (self, STEAD_TYPE_BODY, "P", why->formula, TRUE, 2)->keep = TRUE;
  /* Each line is a paragraph, or a reader would run them together. */
  for (int i = 0; lines[i] != NULL; i++)
    add_text (self, STEAD_TYPE_WORKED, "P", lines[i], TRUE, i == 0 ? 3 : 0.5)->keep = TRUE;
  /* Translators: under a worked rule, where the rule is from. */
  source = g_strdup_printf (_("Source: %s"), why->source);
  add_text (self, STEAD_TYPE_SMALL, "P", source, TRUE, 2);
}

void
stead_pages_keep_last (SteadPages *self)
{
  g_return_if_fail (self->blocks->len > 0);
  ((SteadBlock *) self->blocks->pdata[self->blocks->len - 1])->keep = TRUE;
}

void
stead_pages_add_figure (SteadPages       *self,
                        double            height,
                        SteadFigurePaint  paint,
                        gpointer          data,
                        GDestroyNotify    destroy)
{
  SteadBlock *block = add_block (self, STEAD_PAGE_BLOCK_FIGURE, 12);

  block->height = height;
  block->paint = paint;
  block->data = data;
  block->destroy = destroy;
}

void
stead_pages_add_table (SteadPages             *self,
                       const SteadPagesColumn *columns,
                       int                     n_columns)
{
  SteadBlock *block;

  g_return_if_fail (n_columns > 0 && n_columns <= STEAD_PAGES_MAX_COLUMNS);
  block = add_block (self, STEAD_PAGE_BLOCK_TABLE, 8);
  block->n_columns = n_columns;
  block->rows = g_ptr_array_new_with_free_func (row_free);
  for (int i = 0; i < n_columns; i++)
    {
      block->titles[i] = g_markup_escape_text (columns[i].title != NULL ? columns[i].title : "", -1);
      block->aligns[i] = columns[i].align;
      block->shares[i] = columns[i].share;
      block->has_head |= columns[i].title != NULL;
    }
}

SteadPagesRow *
stead_pages_add_row (SteadPages         *self,
                     SteadRowLook        look,
                     int                 key,
                     const char * const *cells)
{
  SteadPagesRow *row;
  SteadBlock *block;

  g_return_val_if_fail (self->blocks->len > 0, NULL);
  block = self->blocks->pdata[self->blocks->len - 1];
  g_return_val_if_fail (block->kind == STEAD_PAGE_BLOCK_TABLE, NULL);
  row = g_new0 (SteadPagesRow, 1);
  row->look = look;
  row->key = key;
  for (int i = 0; i < block->n_columns; i++)
    {
      gboolean is_box = cells[i] != NULL && g_str_has_prefix (cells[i], STEAD_PAGES_BOX);

      row->cells[i] = g_markup_escape_text (is_box ? "\n" : cells[i] != NULL ? cells[i] : "", -1);
      row->boxes[i] = is_box ? g_markup_escape_text (cells[i] + strlen (STEAD_PAGES_BOX), -1) : NULL;
    }
  g_ptr_array_add (block->rows, row);
  return row;
}

void
stead_pages_row_fill (SteadPagesRow *row,
                      int            column,
                      const char    *text)
{
  g_return_if_fail (row != NULL && column >= 0 && column < STEAD_PAGES_MAX_COLUMNS);

  g_free (row->cells[column]);
  row->cells[column] = g_markup_escape_text (text, -1);
}

SteadType
stead_pages_row_type (SteadRowLook look)
{
  switch (look)
    {
    case STEAD_ROW_SOFT: return STEAD_TYPE_CELL_SOFT;
    case STEAD_ROW_TOTAL:
    case STEAD_ROW_HEAD: return STEAD_TYPE_CELL_TOTAL;
    case STEAD_ROW_PLAIN:
    default: return STEAD_TYPE_CELL;
    }
}

const char *
stead_pages_title (const SteadPages *self)
{
  return self->title;
}

const char *
stead_pages_language (const SteadPages *self)
{
  return self->language;
}

const char *
stead_pages_author (const SteadPages *self)
{
  return self->farm_name;
}

SteadDay
stead_pages_day (const SteadPages *self)
{
  return self->day;
}

int
stead_pages_count (const SteadPages *self)
{
  return self->n_pages;
}

void
stead_pages_size (const SteadPages *self,
                  double           *width,
                  double           *height)
{
  *width = self->width;
  *height = self->height;
}

void
stead_pages_headings (const SteadPages *self,
                      SteadHeadingFunc  func,
                      gpointer          data)
{
  for (guint i = 0; i < self->placed->len; i++)
    {
      const SteadPlaced *placed = &g_array_index (self->placed, SteadPlaced, i);
      g_autofree char *plain = NULL;

      if (placed->block->kind != STEAD_PAGE_BLOCK_TEXT || placed->block->tag[0] != 'H'
          || g_str_equal (placed->block->tag, "H3"))
        continue;
      plain = stead_words_plain (placed->block->markup);
      func (plain, placed->page, placed->y, data);
    }
}
