/* stead-core-error.h - the error domain of the layer core.
 *
 * Every message in this domain is meant for the person at the screen: a whole
 * translated sentence that says what to do.  A bug in our own code is never
 * reported here; that is what g_return_if_fail() is for.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define STEAD_CORE_ERROR (stead_core_error_quark ())

/**
 * SteadCoreError:
 * @STEAD_CORE_ERROR_RANGE: a number lies outside what the rule covers
 * @STEAD_CORE_ERROR_PARSE: a text could not be understood
 * @STEAD_CORE_ERROR_UNIT: a unit is unknown, or measures another kind of thing
 * @STEAD_CORE_ERROR_NONE: the question has no answer for these inputs
 * @STEAD_CORE_ERROR_STOPPED: the person stopped the work before its end
 */
typedef enum
{
  STEAD_CORE_ERROR_RANGE,
  STEAD_CORE_ERROR_PARSE,
  STEAD_CORE_ERROR_UNIT,
  STEAD_CORE_ERROR_NONE,
  STEAD_CORE_ERROR_STOPPED,
} SteadCoreError;

GQuark stead_core_error_quark (void);

G_END_DECLS
