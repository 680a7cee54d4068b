import type { ButtonHTMLAttributes } from 'react';
import styles from './Button.module.css';
import { Icon, type IconName } from './Icon';

interface IconButtonProps extends Omit<ButtonHTMLAttributes<HTMLButtonElement>, 'className' | 'children'> {
  icon: IconName;
  /** What it does, said by screen readers and shown on hover. */
  label: string;
  /** Give it when the button is a switch. */
  pressed?: boolean;
  /** There is nothing to do now. It keeps the focus of whoever has just done the last of it, as a browser's own would not. */
  disabled?: boolean;
}

export function IconButton({
  icon,
  label,
  pressed,
  disabled = false,
  type = 'button',
  onClick,
  ...rest
}: IconButtonProps) {
  return (
    <button
      {...rest}
      type={type}
      aria-label={label}
      aria-pressed={pressed}
      aria-disabled={disabled || undefined}
      onClick={disabled ? undefined : onClick}
      title={label}
      className={`${styles.button} ${styles.square}`}
    >
      <Icon name={icon} />
    </button>
  );
}
