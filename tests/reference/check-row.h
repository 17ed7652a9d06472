/* check-row.h - one row of a reference file: read, answered, compared. */
#pragma once

#include "check.h"

G_BEGIN_DECLS

typedef enum
{
  CHECK_OK,
  CHECK_DIFFERS,
  CHECK_UNKNOWN,
} CheckVerdict;

typedef struct
{
  const char *id;
  const char *topic;
  const char *inputs;
  const char *expected;
  const char *unit;
  const char *tolerance;
} CheckFields;

/**
 * check_row_run:
 * @fields: the row
 * @areas: (array zero-terminated=1): the topics that are known
 * @out_says: (out): what to print after the id: "ok", "differs got=… expected=…",
 *   "unknown topic …"
 */
CheckVerdict check_row_run (const CheckFields         *fields,
                            const CheckTopic * const  *areas,
                            char                     **out_says);

G_END_DECLS
