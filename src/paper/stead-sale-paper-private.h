/* stead-sale-paper-private.h - what the papers of a sale day share. */
#pragma once

#include "answer/stead-sale-answer.h"
#include "paper/stead-paper-private.h"

G_BEGIN_DECLS

typedef struct
{
  SteadImprint *imprint;
  SteadFarm    *farm;
  SteadSale    *sale;
} SteadSaleFacts;

void stead_sale_facts_clear (SteadSaleFacts *facts);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SteadSaleFacts, stead_sale_facts_clear)

/* @of: the name of a sale, or %NULL for the next one. */
gboolean    stead_sale_facts_read  (SteadStore  *store,
                                    const char  *of,
                                    SteadSaleFacts *facts,
                                    GError     **error) G_GNUC_WARN_UNUSED_RESULT;
/* A paper with its title, and day, hours and place under it; @what: "tally sheet". */
SteadPages *stead_sale_paper_begin (const SteadSaleFacts *facts,
                                    const char           *what) G_GNUC_WARN_UNUSED_RESULT;
/* A sum of money in words; NAN: "–". */
char       *stead_sale_paper_money (const SteadSaleFacts *facts,
                                    double                cents) G_GNUC_WARN_UNUSED_RESULT;
/* Texts of up to six cells; what the table does not have is %NULL. */
void        stead_sale_paper_row   (SteadPages   *pages,
                                    SteadRowLook  look,
                                    const char   *a,
                                    const char   *b,
                                    const char   *c,
                                    const char   *d,
                                    const char   *e,
                                    const char   *f);

G_END_DECLS
