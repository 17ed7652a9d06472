/* stead-pages-private.h - the blocks of a document, shared by its flow and its drawing. */
#pragma once

#include "paper/stead-pages.h"

G_BEGIN_DECLS

#define STEAD_PAGES_MARGIN 54.0
#define STEAD_PAGES_KEY_SIZE 9.0
#define STEAD_PAGES_KEY_ROOM 15.0
#define STEAD_PAGES_CELL_GAP 10.0    /* between two columns */
#define STEAD_PAGES_CELL_PAD 2.6     /* over and under the text of a row, not set tight */

/* How a text looks; the styles of the whole document are one table. */
typedef enum
{
  STEAD_TYPE_TITLE,
  STEAD_TYPE_LEAD,
  STEAD_TYPE_HEADING,
  STEAD_TYPE_BODY,
  STEAD_TYPE_STRONG,
  STEAD_TYPE_WORKED,
  STEAD_TYPE_SMALL,
  STEAD_TYPE_CAUTION,
  STEAD_TYPE_CELL,
  STEAD_TYPE_CELL_SOFT,
  STEAD_TYPE_CELL_TOTAL,
  STEAD_TYPE_CELL_HEAD,
  STEAD_TYPE_FRAME,
  STEAD_TYPE_FRAME_STRONG,
} SteadType;

struct _SteadPagesRow
{
  SteadRowLook  look;
  int           key;
  char         *cells[STEAD_PAGES_MAX_COLUMNS];
  char         *boxes[STEAD_PAGES_MAX_COLUMNS];   /* (nullable): what stands at the foot of a box; markup */
  double        height;      /* of its text */
};

typedef enum
{
  STEAD_PAGE_BLOCK_TEXT,
  STEAD_PAGE_BLOCK_FIGURE,
  STEAD_PAGE_BLOCK_TABLE,
} SteadBlockKind;

typedef struct
{
  SteadBlockKind    kind;
  SteadType         type;
  const char       *tag;         /* "H1", "H2", "P" */
  char             *markup;
  gboolean          keep;        /* with the block that follows */
  double            before;      /* room over it, not at the head of a page, not set tight */
  double            height;      /* of a text or figure */

  SteadFigurePaint  paint;
  gpointer          data;
  GDestroyNotify    destroy;

  int               n_columns;
  char             *titles[STEAD_PAGES_MAX_COLUMNS];
  SteadAlign        aligns[STEAD_PAGES_MAX_COLUMNS];
  double            shares[STEAD_PAGES_MAX_COLUMNS];
  double            widths[STEAD_PAGES_MAX_COLUMNS];
  gboolean          has_head;
  double            head_height; /* of its text */
  GPtrArray        *rows;        /* of SteadPagesRow */
} SteadBlock;

/* A block, or some rows of it, on a page. */
typedef struct
{
  const SteadBlock *block;
  int               page;
  double            y;
  double            height;
  guint             first_row, n_rows;
} SteadPlaced;

struct _SteadPages
{
  char      *title;
  const char *language;   /* tag of the words: that of the program when the pages were begun */
  char      *farm_name;
  char      *made;       /* "Made on Mar 3, 2026" */
  char      *origin;     /* period and change number */
  SteadDay   day;
  double     width, height;
  int        n_pages;
  GPtrArray *blocks;     /* of SteadBlock */
  GArray    *placed;     /* of SteadPlaced, in the order of reading */
  double     tightness;  /* of the room between blocks, at most 1 */
  double     cell_pad;   /* over and under the text of a row */
  SteadSheetPaint  paint_sheet;   /* (nullable): of a document of sheets */
  gpointer         sheet_data;
  GDestroyNotify   sheet_destroy;
};

double stead_pages_content_width (const SteadPages *self);

/* Of a row and of the head of a table, with the room round the text; once settled. */
double stead_pages_row_height  (const SteadPages    *self,
                                const SteadPagesRow *row);
double stead_pages_head_height (const SteadPages    *self,
                                const SteadBlock    *block);

/* Height of a text in its type; width 0: one line, whose width is told. */
void stead_type_measure (cairo_t    *cr,
                         SteadType   type,
                         const char *markup,
                         double      max_width,
                         double     *width,
                         double     *height);

/* Paints a text with its top at @y and its box from @x to @x + @width. */
void stead_type_paint (cairo_t    *cr,
                       SteadType   type,
                       const char *markup,
                       SteadAlign  align,
                       double      x,
                       double      y,
                       double      width);

/* The type of a row's cells. */
SteadType stead_pages_row_type (SteadRowLook look);

G_END_DECLS
