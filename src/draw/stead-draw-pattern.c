/* stead-draw-pattern.c - areas and parts of a bar told apart by patterns.
 *
 * On paper everything is vector: a hatch is lines cut to the shape, so that it stays
 * sharp.  On the screen large areas are filled from a tile, which takes a fraction of
 * the time: they are painted anew at each step of a drag.
 */
#include "config.h"

#include <math.h>

#include "draw/stead-draw.h"

#define HATCH_GAP 9.0      /* between hatch lines, for text of 12 */
#define PRINT_HATCH_GAP 7.0
#define WASH 0.12          /* opacity of an area's ground and of its hatch */
#define HATCH 0.30
#define PRINT_WASH 0.08
#define PRINT_HATCH 0.55
#define TILE_SIZE 128      /* pixels at least */
#define MOST_TILES 24

/* Ink or card, whichever is the clearer on the role's colour. */
static SteadRole
clear_role_on (SteadScheme scheme,
               SteadRole   role)
{
  guint32 under = stead_palette_rgb (scheme, role);
  double ink = stead_palette_contrast (under, stead_palette_rgb (scheme, STEAD_ROLE_INK));
  double card = stead_palette_contrast (under, stead_palette_rgb (scheme, STEAD_ROLE_CARD));

  return ink >= card ? STEAD_ROLE_INK : STEAD_ROLE_CARD;
}

/* The hatch lines of one slant are those where across_x * x + across_y * y is a
 * multiple of the gap.  They are cut to the path by arithmetic: a clip of the same
 * shape is several times slower. */
typedef struct
{
  double across_x, across_y;
} Slant;

static const Slant rising = { 1, 1 }, falling = { -1, 1 }, level = { 0, 1 };

#define MAX_CROSSINGS 256

typedef struct
{
  double at[MAX_CROSSINGS];   /* x of each crossing with one hatch line, rising */
  int    n;
} Crossings;

static void
crossings_add (Crossings *self,
               double     x)
{
  int i = self->n;

  if (self->n == MAX_CROSSINGS)
    return;
  for (self->n++; i > 0 && self->at[i - 1] > x; i--)
    self->at[i] = self->at[i - 1];
  self->at[i] = x;
}

static void
crossings_add_edge (Crossings   *self,
                    const Slant *slant,
                    double       c,
                    double       x0,
                    double       y0,
                    double       x1,
                    double       y1)
{
  double over0 = slant->across_x * x0 + slant->across_y * y0 - c;
  double over1 = slant->across_x * x1 + slant->across_y * y1 - c;

  if ((over0 < 0) != (over1 < 0))
    crossings_add (self, x0 + (x1 - x0) * over0 / (over0 - over1));
}

/* Walks the edges of a flat path; each part of it is closed, as filling would. */
static void
crossings_find (Crossings          *self,
                const cairo_path_t *path,
                const Slant        *slant,
                double              c)
{
  double x = 0, y = 0, start_x = 0, start_y = 0;

  self->n = 0;
  for (int i = 0; i < path->num_data; i += path->data[i].header.length)
    {
      const cairo_path_data_t *data = &path->data[i];
      gboolean line = data->header.type == CAIRO_PATH_LINE_TO;
      double to_x = line ? data[1].point.x : start_x, to_y = line ? data[1].point.y : start_y;

      crossings_add_edge (self, slant, c, x, y, to_x, to_y);
      x = to_x;
      y = to_y;
      if (data->header.type == CAIRO_PATH_MOVE_TO)
        {
          x = start_x = data[1].point.x;
          y = start_y = data[1].point.y;
        }
    }
  crossings_add_edge (self, slant, c, x, y, start_x, start_y);
}

/* Adds the lines of one slant, cut to @path, to the context's path. */
static void
hatch_lines (cairo_t            *cr,
             const cairo_path_t *path,
             const Slant        *slant,
             const double        extents[4],
             double              gap,
             double              line_width)
{
  double low = INFINITY, high = -INFINITY;
  Crossings crossings;

  for (int corner = 0; corner < 4; corner++)
    {
      double c = slant->across_x * extents[corner & 1 ? 2 : 0] + slant->across_y * extents[corner & 2 ? 3 : 1];

      low = MIN (low, c);
      high = MAX (high, c);
    }
  /* Multiples of the gap, so that lines keep their place on the sheet while the area moves under a drag. */
  for (double c = ceil ((low + line_width) / gap) * gap; c <= high - line_width; c += gap)
    {
      crossings_find (&crossings, path, slant, c);
      for (int i = 0; i + 1 < crossings.n; i += 2)
        {
          /* Half a line short, so that no corner of a slanted end looks out of the shape. */
          double x0 = crossings.at[i] + line_width / 2, x1 = crossings.at[i + 1] - line_width / 2;

          if (x0 >= x1)
            continue;
          cairo_move_to (cr, x0, (c - slant->across_x * x0) / slant->across_y);
          cairo_line_to (cr, x1, (c - slant->across_x * x1) / slant->across_y);
        }
    }
}

static void
hatch_dots (cairo_t *cr,
            double   x0,
            double   y0,
            double   x1,
            double   y1,
            double   gap)
{
  gboolean odd = FALSE;

  for (double y = floor (y0 / gap) * gap + gap / 2; y <= y1; y += gap / 2, odd = !odd)
    for (double x = floor (x0 / gap) * gap + (odd ? gap / 2 : 0); x <= x1; x += gap)
      {
        cairo_move_to (cr, x, y);
        cairo_line_to (cr, x, y);   /* a round cap makes the dot */
      }
}

/* Dots stand in keys and bars only: a clip is fast enough there. */
static void
hatch_with_dots (cairo_t *cr,
                 double   gap,
                 double   line_width)
{
  double x0, y0, x1, y1;

  cairo_save (cr);
  cairo_clip (cr);
  cairo_clip_extents (cr, &x0, &y0, &x1, &y1);
  if (x1 > x0 && y1 > y0)
    hatch_dots (cr, x0, y0, x1, y1, gap);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_width (cr, line_width * 2);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* Strokes the pattern inside the current path with the source that is set; the path is kept. */
static void
hatch_current (cairo_t      *cr,
               SteadPattern  pattern,
               double        gap,
               double        line_width)
{
  double extents[4];
  cairo_path_t *path;

  if (pattern == STEAD_PATTERN_SOLID)
    return;
  path = cairo_copy_path_flat (cr);
  cairo_path_extents (cr, &extents[0], &extents[1], &extents[2], &extents[3]);
  cairo_set_dash (cr, NULL, 0, 0);
  if (pattern == STEAD_PATTERN_DOTS)
    hatch_with_dots (cr, gap, line_width);
  cairo_new_path (cr);
  if (pattern == STEAD_PATTERN_RISING || pattern == STEAD_PATTERN_CROSS)
    hatch_lines (cr, path, &rising, extents, gap, line_width);
  if (pattern == STEAD_PATTERN_FALLING || pattern == STEAD_PATTERN_CROSS)
    hatch_lines (cr, path, &falling, extents, gap, line_width);
  if (pattern == STEAD_PATTERN_LINES)
    hatch_lines (cr, path, &level, extents, gap * 0.6, line_width);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_width (cr, line_width);
  cairo_stroke (cr);
  cairo_append_path (cr, path);
  cairo_path_destroy (path);
}

void
stead_fill_pattern (cairo_t              *cr,
                    const SteadDrawStyle *style,
                    SteadRole             role,
                    SteadPattern          pattern,
                    gboolean              outline)
{
  stead_palette_set_source (cr, style->scheme, role, 1);
  cairo_fill_preserve (cr);
  stead_palette_set_source (cr, style->scheme, clear_role_on (style->scheme, role), 0.85);
  hatch_current (cr, pattern, style->font_size / 2, style->font_size / 14);
  if (outline)
    {
      stead_palette_set_source (cr, style->scheme, STEAD_ROLE_INK, 1);
      cairo_set_dash (cr, NULL, 0, 0);
      cairo_set_line_width (cr, style->font_size / 12);
      cairo_stroke_preserve (cr);
    }
  cairo_new_path (cr);
}

/* --- areas on the screen: wash and hatch from one tile ------------------------- */

/* Whether what is painted is pixels, one to a unit. */
static gboolean
is_screen (cairo_t              *cr,
           const SteadDrawStyle *style)
{
  cairo_surface_t *target = cairo_get_target (cr);
  cairo_surface_type_t type = cairo_surface_get_type (target);
  double x_scale, y_scale;

  cairo_surface_get_device_scale (target, &x_scale, &y_scale);
  return style->scheme != STEAD_SCHEME_PRINT && x_scale <= 1 && y_scale <= 1
         && (type == CAIRO_SURFACE_TYPE_IMAGE || type == CAIRO_SURFACE_TYPE_RECORDING);
}

typedef struct
{
  SteadScheme  scheme;
  SteadRole    role;
  SteadPattern pattern;
  int          gap;          /* pixels */
  double       line_width;
} TileKey;

static guint
tile_hash (gconstpointer data)
{
  const TileKey *key = data;

  return (guint) (((key->scheme * 31 + key->role) * 31 + key->pattern) * 31 + key->gap);
}

static gboolean
tile_equal (gconstpointer a,
            gconstpointer b)
{
  const TileKey *x = a, *y = b;

  return x->scheme == y->scheme && x->role == y->role && x->pattern == y->pattern && x->gap == y->gap
         && !(ABS (x->line_width - y->line_width) > 1e-9);
}

/* Some gaps wide: a tile of one would be put together again for each run of pixels. */
static cairo_pattern_t *
tile_new (const TileKey *key)
{
  int size = (TILE_SIZE + key->gap - 1) / key->gap * key->gap;
  int down = key->pattern == STEAD_PATTERN_FALLING ? size : -size;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, size, size);
  cairo_t *cr = cairo_create (surface);
  cairo_pattern_t *tile;

  stead_palette_set_source (cr, key->scheme, key->role, WASH);
  cairo_paint (cr);
  stead_palette_set_source (cr, key->scheme, key->role, HATCH);
  cairo_set_line_width (cr, key->line_width);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_SQUARE);   /* into the neighbour */
  for (int x = -size; x <= 2 * size; x += key->gap)
    {
      cairo_move_to (cr, x, 0);
      cairo_line_to (cr, x + down, size);
    }
  cairo_stroke (cr);
  cairo_destroy (cr);
  tile = cairo_pattern_create_for_surface (surface);
  cairo_pattern_set_extend (tile, CAIRO_EXTEND_REPEAT);
  cairo_surface_destroy (surface);
  return tile;
}

/* A tile is made once; each thread has its own. */
static cairo_pattern_t *
find_tile (const TileKey *key)
{
  static GPrivate tiles = G_PRIVATE_INIT ((GDestroyNotify) g_hash_table_unref);
  GHashTable *table = g_private_get (&tiles);
  cairo_pattern_t *tile;

  if (table == NULL)
    {
      table = g_hash_table_new_full (tile_hash, tile_equal, g_free, (GDestroyNotify) cairo_pattern_destroy);
      g_private_set (&tiles, table);
    }
  tile = g_hash_table_lookup (table, key);
  if (tile == NULL)
    {
      if (g_hash_table_size (table) >= MOST_TILES)   /* many sizes of text were tried */
        g_hash_table_remove_all (table);
      tile = tile_new (key);
      g_hash_table_insert (table, g_memdup2 (key, sizeof *key), tile);
    }
  return tile;
}

void
stead_fill_area (cairo_t              *cr,
                 const SteadDrawStyle *style,
                 SteadRole             role,
                 SteadPattern          pattern)
{
  gboolean print = style->scheme == STEAD_SCHEME_PRINT;
  double gap = style->font_size / 12 * (print ? PRINT_HATCH_GAP : HATCH_GAP);
  double line_width = style->font_size / 16;

  if (is_screen (cr, style) && (pattern == STEAD_PATTERN_RISING || pattern == STEAD_PATTERN_FALLING))
    {
      TileKey key = { style->scheme, role, pattern, MAX (2, (int) lround (gap)), line_width };

      cairo_set_source (cr, find_tile (&key));
      cairo_fill (cr);
      return;
    }
  stead_palette_set_source (cr, style->scheme, role, print ? PRINT_WASH : WASH);
  cairo_fill_preserve (cr);
  stead_palette_set_source (cr, style->scheme, role, print ? PRINT_HATCH : HATCH);
  hatch_current (cr, pattern, gap, line_width);
  cairo_new_path (cr);
}
