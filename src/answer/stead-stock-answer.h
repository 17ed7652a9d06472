/* stead-stock-answer.h - "What is in the store room, and what will run out?" */
#pragma once

#include "answer/stead-words.h"
#include "store/stead-lot-repo.h"

G_BEGIN_DECLS

typedef struct
{
  SteadItem  *item;
  SteadStock  stock;
  double      days;       /* that it lasts at the present use; NAN: no use */
  gboolean    low;        /* under the reorder mark, or lasting less than seven days */
  char       *on_hand;    /* "62 lb", as a person reads it */
  char       *lasts;      /* "9 days", "not used lately" */
} SteadStockLine;

typedef struct
{
  GPtrArray *lines;         /* of SteadStockLine, by kind and name */
  gint64     value_cents;   /* all lots on hand, at what they cost */
  char      *sentence;      /* markup */
} SteadStockAnswer;

void stead_stock_line_free   (SteadStockLine *line);
void stead_stock_answer_free (SteadStockAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadStockAnswer, stead_stock_answer_free)

SteadStockAnswer *stead_stock_answer_new (SteadStore  *store,
                                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
