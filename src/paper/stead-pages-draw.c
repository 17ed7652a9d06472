/* stead-pages-draw.c - draws the pages that were settled. */
#include "config.h"

#include "draw/stead-cost-bar.h"
#include "paper/stead-pages-private.h"

#include <glib/gi18n-lib.h>

#define FRAME_TOP 34.0
#define FRAME_BOTTOM 38.0   /* of the foot's text, over the edge of the page */

#define FRAME_GAP 12.0
#define BOX_INSET 2.0       /* of a box to write in, from the rules of its row */

static const SteadDrawStyle style = { STEAD_SCHEME_PRINT, 9, NULL, NULL };

static void
paint_rule (const SteadPages *self,
            cairo_t          *cr,
            SteadRole         role,
            double            y,
            double            line_width)
{
  stead_palette_set_source (cr, STEAD_SCHEME_PRINT, role, 1);
  cairo_set_dash (cr, NULL, 0, 0);
  cairo_set_line_width (cr, line_width);
  cairo_new_path (cr);
  cairo_move_to (cr, STEAD_PAGES_MARGIN, y);
  cairo_line_to (cr, self->width - STEAD_PAGES_MARGIN, y);
  cairo_stroke (cr);
}

/* What stands left and right over the page takes a third of it at most; between them there is room. */
static double
frame_side (cairo_t    *cr,
            const char *left,
            const char *right,
            double      width)
{
  double left_width, right_width, h;

  stead_type_measure (cr, STEAD_TYPE_FRAME_STRONG, left, 0, &left_width, &h);
  stead_type_measure (cr, STEAD_TYPE_FRAME, right, 0, &right_width, &h);
  return MIN (width / 3, MAX (left_width, right_width) + FRAME_GAP);
}

/* Whose it is and when it was made over the page; where it comes from under it. */
static void
paint_frame (const SteadPages *self,
             int               page,
             cairo_t          *cr)
{
  double width = stead_pages_content_width (self);
  double bottom = self->height - FRAME_BOTTOM;
  g_autofree char *farm = g_markup_escape_text (self->farm_name, -1);
  g_autofree char *made = g_markup_escape_text (self->made, -1);
  g_autofree char *origin = g_markup_escape_text (self->origin, -1);
  g_autofree char *title = g_markup_escape_text (self->title, -1);
  /* Translators: foot of a page: which page it is, of how many. */
  g_autofree char *number = g_strdup_printf (_("Page %d of %d"), page + 1, self->n_pages);

  stead_type_paint (cr, STEAD_TYPE_FRAME_STRONG, farm, STEAD_ALIGN_LEFT, STEAD_PAGES_MARGIN, FRAME_TOP,
                    page == 0 ? width * 0.7 : width / 3);
  if (page > 0)   /* the first page has it as its head */
    {
      double side = frame_side (cr, farm, made, width);

      stead_type_paint (cr, STEAD_TYPE_FRAME, title, STEAD_ALIGN_CENTER, STEAD_PAGES_MARGIN + side, FRAME_TOP + 1,
                        width - 2 * side);
    }
  stead_type_paint (cr, STEAD_TYPE_FRAME, made, STEAD_ALIGN_RIGHT, STEAD_PAGES_MARGIN, FRAME_TOP + 1, width);
  paint_rule (self, cr, STEAD_ROLE_INK, FRAME_TOP + 15, 0.75);
  paint_rule (self, cr, STEAD_ROLE_RULE, bottom - 6, 0.5);
  stead_type_paint (cr, STEAD_TYPE_FRAME, origin, STEAD_ALIGN_LEFT, STEAD_PAGES_MARGIN, bottom, width * 0.8);
  stead_type_paint (cr, STEAD_TYPE_FRAME, number, STEAD_ALIGN_RIGHT, STEAD_PAGES_MARGIN, bottom, width);
}

/* Room to write in by hand: an outline as high as the row. */
static void
paint_box (cairo_t    *cr,
           const char *foot,
           double      x,
           double      y,
           double      width,
           double      height)
{
  double w, h;

  stead_palette_set_source (cr, STEAD_SCHEME_PRINT, STEAD_ROLE_SOFT, 1);
  cairo_set_line_width (cr, 0.4);
  cairo_rectangle (cr, x, y + BOX_INSET, width, height - 2 * BOX_INSET);
  cairo_stroke (cr);
  if (*foot == '\0')
    return;
  stead_type_measure (cr, STEAD_TYPE_SMALL, foot, width - 6, &w, &h);
  stead_type_paint (cr, STEAD_TYPE_SMALL, foot, STEAD_ALIGN_RIGHT, x + 3, y + height - BOX_INSET - h - 1, width - 6);
}

/* @row: (nullable): of the cells; NULL: the head of the table */
static void
paint_cells (const SteadPages    *self,
             cairo_t             *cr,
             const SteadBlock    *block,
             const SteadPagesRow *row,
             double               y)
{
  char * const *cells = row != NULL ? row->cells : block->titles;
  SteadType type = row != NULL ? stead_pages_row_type (row->look) : STEAD_TYPE_CELL_HEAD;
  const char *tag = row != NULL ? "TD" : "TH";
  int key = row != NULL ? row->key : STEAD_PAGES_NO_KEY;
  double x = STEAD_PAGES_MARGIN;

  cairo_tag_begin (cr, "TR", NULL);
  for (int i = 0; i < block->n_columns; i++)
    {
      double room = i == 0 && key >= 0 ? STEAD_PAGES_KEY_ROOM : 0;

      cairo_tag_begin (cr, tag, NULL);
      if (room > 0)
        {
          cairo_save (cr);
          cairo_translate (cr, x, y + self->cell_pad + 1);
          stead_cost_key_paint (cr, &style, (SteadCostKind) key, STEAD_PAGES_KEY_SIZE);
          cairo_restore (cr);
        }
      if (row != NULL && row->boxes[i] != NULL)
        paint_box (cr, row->boxes[i], x, y, block->widths[i], stead_pages_row_height (self, row));
      else
        stead_type_paint (cr, type, cells[i], block->aligns[i], x + room, y + self->cell_pad, block->widths[i] - room);
      cairo_tag_end (cr, tag);
      x += block->widths[i] + STEAD_PAGES_CELL_GAP;
    }
  cairo_tag_end (cr, "TR");
}

static void
paint_table (const SteadPages  *self,
             const SteadPlaced *placed,
             cairo_t           *cr)
{
  const SteadBlock *block = placed->block;
  double y = placed->y;

  cairo_tag_begin (cr, "Table", NULL);
  if (block->has_head)
    {
      paint_cells (self, cr, block, NULL, y);
      y += stead_pages_head_height (self, block);
      paint_rule (self, cr, STEAD_ROLE_SOFT, y, 0.6);
    }
  for (guint i = placed->first_row; i < placed->first_row + placed->n_rows; i++)
    {
      const SteadPagesRow *row = block->rows->pdata[i];

      if (row->look == STEAD_ROW_TOTAL || row->look == STEAD_ROW_HEAD)
        paint_rule (self, cr, STEAD_ROLE_INK, y, 0.75);
      else if (i > placed->first_row)
        paint_rule (self, cr, STEAD_ROLE_RULE, y, 0.4);
      paint_cells (self, cr, block, row, y);
      y += stead_pages_row_height (self, row);
    }
  cairo_tag_end (cr, "Table");
}

static void
paint_figure (const SteadPages  *self,
              const SteadPlaced *placed,
              cairo_t           *cr)
{
  cairo_tag_begin (cr, "Figure", NULL);
  cairo_save (cr);
  cairo_translate (cr, STEAD_PAGES_MARGIN, placed->y);
  placed->block->paint (cr, stead_pages_content_width (self), placed->height, placed->block->data);
  cairo_restore (cr);
  cairo_tag_end (cr, "Figure");
}

static void
paint_text (const SteadPages  *self,
            const SteadPlaced *placed,
            cairo_t           *cr)
{
  const SteadBlock *block = placed->block;

  if (block->type == STEAD_TYPE_CAUTION)
    {
      /* A bar beside it, so that it is seen on a grey print too. */
      stead_palette_set_source (cr, STEAD_SCHEME_PRINT, STEAD_ROLE_TOMATO, 1);
      cairo_rectangle (cr, STEAD_PAGES_MARGIN - 9, placed->y, 3, placed->height);
      cairo_fill (cr);
    }
  cairo_tag_begin (cr, block->tag, NULL);
  stead_type_paint (cr, block->type, block->markup, STEAD_ALIGN_LEFT, STEAD_PAGES_MARGIN, placed->y,
                    stead_pages_content_width (self));
  cairo_tag_end (cr, block->tag);
}

void
stead_pages_draw (const SteadPages *self,
                  int               page,
                  cairo_t          *cr)
{
  g_return_if_fail (page >= 0 && page < self->n_pages);
  if (self->paint_sheet != NULL)
    {
      self->paint_sheet (cr, page, self->sheet_data);
      return;
    }
  cairo_save (cr);
  paint_frame (self, page, cr);
  for (guint i = 0; i < self->placed->len; i++)
    {
      const SteadPlaced *placed = &g_array_index (self->placed, SteadPlaced, i);

      if (placed->page != page)
        continue;
      if (placed->block->kind == STEAD_PAGE_BLOCK_TEXT)
        paint_text (self, placed, cr);
      else if (placed->block->kind == STEAD_PAGE_BLOCK_FIGURE)
        paint_figure (self, placed, cr);
      else
        paint_table (self, placed, cr);
    }
  cairo_restore (cr);
}
