/* stead-limit-private.h - the inside of a table of limits. */
#pragma once

#include "core/stead-limit.h"

G_BEGIN_DECLS

typedef enum
{
  LIMIT_IF_EQUAL,
  LIMIT_IF_LESS,
  LIMIT_IF_AT_MOST,
  LIMIT_IF_MORE,
  LIMIT_IF_AT_LEAST,
} LimitOperator;

/* One term of the column "when". */
typedef struct
{
  char          *name;
  LimitOperator  op;
  char         **words;     /* alternatives; NULL if it compares numbers */
  double         number;
} LimitCondition;

typedef struct _LimitRow LimitRow;

struct _LimitRow
{
  SteadLimit       limit;
  char           **subjects;
  GArray          *conditions;    /* of LimitCondition */
  const LimitRow  *shipped;       /* of a local row: the one that it takes the place of */
};

struct _SteadLimitTable
{
  GPtrArray    *rows;         /* of LimitRow, not owned: in force */
  GPtrArray    *own;          /* of LimitRow: all that were read or made for this table, in force or not */
  GHashTable   *by_id;        /* id to LimitRow in @rows */
  GStringChunk *strings;
  int           edition;
};

void limit_row_free (LimitRow *row);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LimitRow, limit_row_free)

/* "jar=pint altitude_ft<=1000" to conditions; NULL if it cannot be read. */
GArray *limit_conditions_parse (const char *text);

/* The row of one line of a table; NULL with @out_column set to what is wrong.
 * @cells go by the columns of limit_column_names. */
LimitRow *limit_row_parse (const char * const  *cells,
                           GStringChunk        *strings,
                           const char         **out_column);

extern const char * const limit_column_names[];
guint limit_n_columns (void);

G_END_DECLS
