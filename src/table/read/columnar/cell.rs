//! Values of a Parquet column as text.

use std::fmt::Write;

use arrow_array::cast::AsArray;
use arrow_array::types::{
    Date32Type, Decimal128Type, Float32Type, Int8Type, Int16Type, Int32Type,
    TimestampMicrosecondType, TimestampMillisecondType, TimestampNanosecondType,
    TimestampSecondType, UInt8Type, UInt16Type, UInt32Type, UInt64Type,
};
use arrow_array::{Array, ArrayRef, Float64Array, Int64Array, PrimitiveArray, StringArray};
use arrow_schema::{DataType, TimeUnit};

use crate::gis::append_number;

/// The values of one column in a batch; the common types at hand.
pub(super) enum Cell<'batch> {
    Text(&'batch StringArray),
    Number(&'batch Float64Array),
    Whole(&'batch Int64Array),
    Other(&'batch ArrayRef),
}

impl<'batch> Cell<'batch> {
    /// Whether a type's values have a text.
    pub(super) const fn is_known(kind: &DataType) -> bool {
        matches!(
            kind,
            DataType::Null
                | DataType::Boolean
                | DataType::Int8
                | DataType::Int16
                | DataType::Int32
                | DataType::Int64
                | DataType::UInt8
                | DataType::UInt16
                | DataType::UInt32
                | DataType::UInt64
                | DataType::Float32
                | DataType::Float64
                | DataType::Decimal128(_, _)
                | DataType::Utf8
                | DataType::Date32
                | DataType::Timestamp(_, _)
        )
    }

    pub(super) fn new(array: &'batch ArrayRef) -> Self {
        match array.data_type() {
            DataType::Utf8 => Self::Text(array.as_string()),
            DataType::Float64 => Self::Number(array.as_primitive()),
            DataType::Int64 => Self::Whole(array.as_primitive()),
            _ => Self::Other(array),
        }
    }

    /// Appends the value of a row; nothing where it is null or not a number.
    pub(super) fn append(&self, row: usize, text: &mut String) {
        match self {
            Self::Text(texts) if texts.is_valid(row) => text.push_str(texts.value(row)),
            Self::Number(numbers) if numbers.is_valid(row) => {
                append_number(text, numbers.value(row));
            }
            Self::Whole(numbers) if numbers.is_valid(row) => {
                text.push_str(itoa::Buffer::new().format(numbers.value(row)));
            }
            Self::Other(array) if array.is_valid(row) => {
                // Writing to memory does not fail.
                let _ = append_other(array, row, text);
            }
            _ => {}
        }
    }
}

fn append_other(array: &ArrayRef, row: usize, text: &mut String) -> std::fmt::Result {
    match array.data_type() {
        DataType::Boolean => write!(text, "{}", array.as_boolean().value(row)),
        DataType::Int8 => write!(text, "{}", array.as_primitive::<Int8Type>().value(row)),
        DataType::Int16 => write!(text, "{}", array.as_primitive::<Int16Type>().value(row)),
        DataType::Int32 => write!(text, "{}", array.as_primitive::<Int32Type>().value(row)),
        DataType::UInt8 => write!(text, "{}", array.as_primitive::<UInt8Type>().value(row)),
        DataType::UInt16 => write!(text, "{}", array.as_primitive::<UInt16Type>().value(row)),
        DataType::UInt32 => write!(text, "{}", array.as_primitive::<UInt32Type>().value(row)),
        DataType::UInt64 => write!(text, "{}", array.as_primitive::<UInt64Type>().value(row)),
        DataType::Float32 => match array.as_primitive::<Float32Type>().value(row) {
            number if number.is_nan() => Ok(()),
            // The shortest text of single precision: 0.1 stays 0.1.
            number => write!(text, "{number}"),
        },
        DataType::Decimal128(_, _) => {
            text.push_str(&array.as_primitive::<Decimal128Type>().value_as_string(row));
            Ok(())
        }
        DataType::Date32 => {
            let date = array.as_primitive::<Date32Type>().value_as_date(row);
            date.map_or(Ok(()), |date| write!(text, "{date}"))
        }
        DataType::Timestamp(unit, zone) => {
            let time = match unit {
                TimeUnit::Second => time::<TimestampSecondType>(array.as_primitive(), row),
                TimeUnit::Millisecond => {
                    time::<TimestampMillisecondType>(array.as_primitive(), row)
                }
                TimeUnit::Microsecond => {
                    time::<TimestampMicrosecondType>(array.as_primitive(), row)
                }
                TimeUnit::Nanosecond => time::<TimestampNanosecondType>(array.as_primitive(), row),
            };
            text.push_str(&time);
            // Stored in UTC wherever a zone is stated.
            if zone.is_some() && !time.is_empty() {
                text.push('Z');
            }
            Ok(())
        }
        _ => Ok(()),
    }
}

/// A time in the form of ISO 8601; empty where it is beyond the calendar.
fn time<T>(times: &PrimitiveArray<T>, row: usize) -> String
where
    T: arrow_array::types::ArrowTemporalType,
    i64: From<T::Native>,
{
    times
        .value_as_datetime(row)
        .map_or_else(String::new, |time| format!("{time:?}"))
}
