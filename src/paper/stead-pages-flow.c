/* stead-pages-flow.c - settles the blocks of a document onto pages.
 *
 * A last page with hardly anything on it looks like a mistake.  So the flow is set
 * a little tighter if that saves the page, and otherwise a heading takes what stands
 * under it along to the last page.
 */
#include "config.h"

#include "paper/stead-pages-private.h"

#include <math.h>

/* The frame stands in the margins; the flow lies between. */
#define TOP_MARGIN 66.0
#define BOTTOM_MARGIN 60.0

/* A short table is not broken, unless it is as high as a large share of the page; a long one
 * does not begin at the foot of a page for fewer rows than this. */
#define WHOLE_ROWS 14
#define WHOLE_SHARE 0.5
#define LEAST_ROWS 3

/* The share of the last page that should be used at least. */
#define LAST_PAGE 0.3

/* How tight the room between blocks and in rows may become, and still look the same. */
static const double tighter[] = { 0.88, 0.76, 0.64 };

/* Columns without a share are as wide as their widest text; the others divide what is left. */
static void
find_widths (cairo_t    *cr,
             SteadBlock *block,
             double      total)
{
  double left = total - (block->n_columns - 1) * STEAD_PAGES_CELL_GAP, shares = 0, w, h;

  for (int i = 0; i < block->n_columns; i++)
    {
      shares += block->shares[i];
      block->widths[i] = 0;
      if (block->shares[i] > 0)
        continue;
      stead_type_measure (cr, STEAD_TYPE_CELL_HEAD, block->titles[i], 0, &w, &h);
      block->widths[i] = w;
      for (guint row = 0; row < block->rows->len; row++)
        {
          const SteadPagesRow *its = block->rows->pdata[row];

          stead_type_measure (cr, stead_pages_row_type (its->look), its->cells[i], 0, &w, &h);
          block->widths[i] = MAX (block->widths[i], w + (i == 0 && its->key >= 0 ? STEAD_PAGES_KEY_ROOM : 0));
        }
      block->widths[i] = MIN (ceil (block->widths[i]) + 1, total / 3);
      left -= block->widths[i];
    }
  for (int i = 0; i < block->n_columns; i++)
    if (block->shares[i] > 0)
      block->widths[i] = MAX (left, 40) * block->shares[i] / shares;
}

static double
text_height (cairo_t             *cr,
             const SteadBlock    *block,
             SteadType            type,
             char * const        *cells,
             double               key_room)
{
  double most = 0, w, h;

  for (int i = 0; i < block->n_columns; i++)
    {
      stead_type_measure (cr, type, cells[i], block->widths[i] - (i == 0 ? key_room : 0), &w, &h);
      most = MAX (most, h);
    }
  return most;
}

static void
measure_table (cairo_t    *cr,
               SteadBlock *block,
               double      width)
{
  find_widths (cr, block, width);
  block->head_height = block->has_head ? text_height (cr, block, STEAD_TYPE_CELL_HEAD, block->titles, 0) : 0;
  for (guint i = 0; i < block->rows->len; i++)
    {
      SteadPagesRow *row = block->rows->pdata[i];

      row->height = text_height (cr, block, stead_pages_row_type (row->look), row->cells,
                                 row->key >= 0 ? STEAD_PAGES_KEY_ROOM : 0);
    }
}

static void
measure_block (cairo_t    *cr,
               SteadBlock *block,
               double      width)
{
  double w;

  if (block->kind == STEAD_PAGE_BLOCK_TEXT)
    stead_type_measure (cr, block->type, block->markup, width, &w, &block->height);
  else if (block->kind == STEAD_PAGE_BLOCK_TABLE)
    measure_table (cr, block, width);
}

double
stead_pages_row_height (const SteadPages    *self,
                        const SteadPagesRow *row)
{
  return row->height + 2 * self->cell_pad;
}

double
stead_pages_head_height (const SteadPages *self,
                         const SteadBlock *block)
{
  return block->has_head ? block->head_height + 2 * self->cell_pad : 0;
}

static double
least_of_table (const SteadPages *self,
                const SteadBlock *block)
{
  double sum = stead_pages_head_height (self, block), least = 0;

  for (guint row = 0; row < block->rows->len && row < WHOLE_ROWS; row++)
    {
      sum += stead_pages_row_height (self, block->rows->pdata[row]);
      if (row < LEAST_ROWS)
        least = sum;
    }
  return block->rows->len <= WHOLE_ROWS && sum <= self->height * WHOLE_SHARE ? sum : least;
}

/* The least that must fit for a block to begin on a page: with those that it keeps to. */
static double
least_height (const SteadPages *self,
              guint             i)
{
  double sum = 0;

  for (; i < self->blocks->len; i++)
    {
      const SteadBlock *block = self->blocks->pdata[i];

      sum += (sum > 0 ? block->before * self->tightness : 0) + block->height;
      if (block->kind == STEAD_PAGE_BLOCK_FIGURE && block->height == 0)
        sum += 200;
      if (block->kind == STEAD_PAGE_BLOCK_TABLE)
        sum += least_of_table (self, block);
      if (!block->keep)
        break;
    }
  return sum;
}

/* Where the flow has come to. */
typedef struct
{
  int    page;
  double y;
  double bottom;
} Cursor;

static void
next_page (Cursor *cursor)
{
  cursor->page++;
  cursor->y = TOP_MARGIN;
}

static void
place (SteadPages       *self,
       const SteadBlock *block,
       Cursor           *cursor,
       double            height,
       guint             first_row,
       guint             n_rows)
{
  SteadPlaced placed = { block, cursor->page, cursor->y, height, first_row, n_rows };

  g_array_append_val (self->placed, placed);
  cursor->y += height;
}

static gboolean
is_head (const SteadBlock *block,
         guint             row)
{
  return ((const SteadPagesRow *) block->rows->pdata[row])->look == STEAD_ROW_HEAD;
}

static void
place_table (SteadPages       *self,
             const SteadBlock *block,
             Cursor           *cursor)
{
  guint first = 0;

  while (first < block->rows->len)
    {
      double height = stead_pages_head_height (self, block);
      guint n = 0;

      while (first + n < block->rows->len)
        {
          double row = stead_pages_row_height (self, block->rows->pdata[first + n]);

          if (n > 0 && cursor->y + height + row > cursor->bottom)
            break;
          height += row;
          n++;
        }
      /* The head of some rows goes along with them. */
      if (n > 1 && first + n < block->rows->len && is_head (block, first + n - 1))
        height -= stead_pages_row_height (self, block->rows->pdata[first + --n]);
      place (self, block, cursor, height, first, n);
      first += n;
      if (first < block->rows->len)
        next_page (cursor);
    }
}

#define NO_BREAK G_MAXUINT

/* Sets the flow anew.  @break_at: a block that begins a page in any case, or NO_BREAK.
 * Returns: the share of the last page that is used */
static double
flow (SteadPages *self,
      double      tightness,
      guint       break_at)
{
  Cursor cursor = { 0, TOP_MARGIN, self->height - BOTTOM_MARGIN };

  self->tightness = tightness;
  self->cell_pad = STEAD_PAGES_CELL_PAD * tightness;
  g_array_set_size (self->placed, 0);
  for (guint i = 0; i < self->blocks->len; i++)
    {
      const SteadBlock *block = self->blocks->pdata[i];
      gboolean at_head = cursor.y == TOP_MARGIN;
      double before = at_head ? 0 : block->before * tightness;

      if (!at_head && (i == break_at || cursor.y + before + least_height (self, i) > cursor.bottom))
        {
          next_page (&cursor);
          before = 0;
        }
      cursor.y += before;
      if (block->kind == STEAD_PAGE_BLOCK_TABLE)
        place_table (self, block, &cursor);
      else
        place (self, block, &cursor,
               block->kind == STEAD_PAGE_BLOCK_FIGURE && block->height == 0 ? cursor.bottom - cursor.y : block->height,
               0, 0);
    }
  self->n_pages = cursor.page + 1;
  return (cursor.y - TOP_MARGIN) / (cursor.bottom - TOP_MARGIN);
}

/* Whether the whole comes on fewer pages, set a little tighter. */
static gboolean
save_page (SteadPages *self)
{
  int n_pages = self->n_pages;

  for (guint i = 0; i < G_N_ELEMENTS (tighter); i++)
    {
      flow (self, tighter[i], NO_BREAK);
      if (self->n_pages < n_pages)
        return TRUE;
    }
  return FALSE;
}

/* Where a page may be begun early: at a heading of @tag, that is not itself kept
 * under another one; NULL: at any. */
static gboolean
may_begin_page (const SteadPages *self,
                guint             i,
                const char       *tag)
{
  const SteadBlock *block = self->blocks->pdata[i];
  const SteadBlock *former = self->blocks->pdata[i - 1];

  return block->keep && !former->keep && (tag == NULL || g_str_equal (block->tag, tag));
}

/* How many blocks begin before the last page, as the flow stands. */
static guint
n_before_last_page (const SteadPages *self)
{
  const SteadPlaced *first = &g_array_index (self->placed, SteadPlaced, 0);
  guint index = 0;

  while (first->page < self->n_pages - 1)
    first++;
  g_ptr_array_find (self->blocks, first->block, &index);
  return first->first_row > 0 ? index + 1 : index;
}

/* The share that is used of the page on which the block before @i ends. */
static double
used_before (const SteadPages *self,
             guint             i)
{
  double end = TOP_MARGIN;

  for (guint n = 0; n < self->placed->len; n++)
    {
      const SteadPlaced *placed = &g_array_index (self->placed, SteadPlaced, n);

      if (placed->block == self->blocks->pdata[i])
        break;
      end = placed->y + placed->height;
    }
  return (end - TOP_MARGIN) / (self->height - BOTTOM_MARGIN - TOP_MARGIN);
}

/* Fills the last page from the one before: a whole section if it is short enough,
 * else what stands under the last headings that fill it. */
static gboolean
fill_last_page (SteadPages *self)
{
  static const char *tags[] = { "H2", NULL };
  guint n_before = n_before_last_page (self);
  int n_pages = self->n_pages;

  for (guint pass = 0; pass < G_N_ELEMENTS (tags); pass++)
    for (guint i = n_before - 1; i > 0; i--)
      {
        double used;

        if (!may_begin_page (self, i, tags[pass]))
          continue;
        used = flow (self, 1, i);
        if (self->n_pages > n_pages)
          break;
        /* A page that is emptied for it would look like a mistake too. */
        if (used >= LAST_PAGE && used_before (self, i) >= LAST_PAGE)
          return TRUE;
      }
  return FALSE;
}

void
stead_pages_settle (SteadPages *self)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);

  for (guint i = 0; i < self->blocks->len; i++)
    measure_block (cr, self->blocks->pdata[i], stead_pages_content_width (self));
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  if (flow (self, 1, NO_BREAK) < LAST_PAGE && self->n_pages > 1 && !save_page (self))
    {
      flow (self, 1, NO_BREAK);
      if (!fill_last_page (self))
        flow (self, 1, NO_BREAK);
    }
}
